//! Prints the JSON Schema of plan.json: `cargo run -p plan --example schema`.

fn main() {
    print!("{}", plan::schema());
}
