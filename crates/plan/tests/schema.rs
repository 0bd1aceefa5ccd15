//! The schema in the repository is the one that the types make, and plans hold to it.

use plan::{Plan, schema};

const KEPT: &str = include_str!("../../../schema/plan.schema.json");

#[test]
fn the_kept_schema_is_the_one_that_the_types_make() {
    assert!(
        KEPT == schema(),
        "schema/plan.schema.json has drifted: run `cargo run -p plan --example schema > schema/plan.schema.json`"
    );
}

#[test]
fn a_plan_holds_to_the_schema_and_a_broken_one_does_not() {
    let schema = serde_json::from_str(KEPT).expect("the kept schema is JSON");
    let validator = jsonschema::validator_for(&schema).expect("the kept schema is a schema");
    let text = Plan::new("Tern Street", 1)
        .to_json()
        .expect("an empty plan can be written");
    let mut value: serde_json::Value = serde_json::from_str(&text).expect("a plan is JSON");
    assert!(validator.is_valid(&value));
    value["seed"] = "one".into();
    assert!(!validator.is_valid(&value));
}

#[test]
fn a_plan_comes_back_as_it_was_written() {
    let plan = Plan::new("Tern Street", 7);
    let text = plan.to_json().expect("an empty plan can be written");
    assert_eq!(Plan::from_json(&text), Ok(plan));
}

#[test]
fn a_negative_zero_has_the_text_of_zero() {
    assert_eq!(plan::millionth(-1e-9).to_bits(), 0.0_f64.to_bits());
    assert_eq!(plan::tenth_of_a_micron(23.995_253_04), 23.995_253);
}
