//! GeoJSON (RFC 7946) becomes shapes with their roles, still in degrees.

use std::collections::BTreeMap;

use serde_json::Value;

use crate::globe::Degrees;

/// What a feature is to a yard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Role {
    Yard,
    Building,
    Barrier,
    Surface,
    Fixture,
}

/// One shape of the file.
#[derive(Clone, Debug)]
pub(super) struct Feature {
    pub(super) role: Option<Role>,
    /// Its texts by key, as `barrier` to `fence`.
    pub(super) tags: BTreeMap<String, String>,
    pub(super) shape: Shape,
}

#[derive(Clone, Debug)]
pub(super) enum Shape {
    Point(Degrees),
    Line(Vec<Degrees>),
    /// Rings, the outer one first.
    Polygon(Vec<Vec<Degrees>>),
}

impl Feature {
    pub(super) fn tag(&self, key: &str) -> Option<&str> {
        self.tags.get(key).map(String::as_str)
    }
}

/// Every shape of a collection, a feature or a bare geometry; of several in one feature,
/// each. Coordinates that are no degrees are counted, and their shapes left out.
pub(super) fn features(root: &Value) -> (Vec<Feature>, usize) {
    let mut found = Vec::new();
    let mut odd = 0;
    let single;
    let all = match root.get("features").and_then(Value::as_array) {
        Some(all) => all,
        None => {
            single = vec![root.clone()];
            &single
        }
    };
    for feature in all {
        let tags = tags(feature);
        let geometry = feature.get("geometry").unwrap_or(feature);
        let mut shapes = Vec::new();
        odd += collect(geometry, &mut shapes, 0);
        for shape in shapes {
            let role = role(&tags, &shape);
            found.push(Feature {
                role,
                tags: tags.clone(),
                shape,
            });
        }
    }
    (found, odd)
}

/// The note of whose map it is, which must stay with what is made of it.
pub(super) fn attribution(root: &Value) -> Option<String> {
    let text = ["attribution", "copyright", "license", "licence"]
        .into_iter()
        .find_map(|key| root.get(key).and_then(Value::as_str))?;
    Some(text.split_whitespace().collect::<Vec<_>>().join(" "))
}

fn tags(feature: &Value) -> BTreeMap<String, String> {
    let Some(properties) = feature.get("properties").and_then(Value::as_object) else {
        return BTreeMap::new();
    };
    let text = |(key, value): (&String, &Value)| Some((key.clone(), value.as_str()?.to_owned()));
    properties.iter().filter_map(text).collect()
}

/// The stated role, or the one that the tags of open maps give.
fn role(tags: &BTreeMap<String, String>, shape: &Shape) -> Option<Role> {
    let tag = |key: &str| tags.get(key).map(String::as_str);
    match tag("role") {
        Some("yard") => return Some(Role::Yard),
        Some("building") => return Some(Role::Building),
        Some("barrier") => return Some(Role::Barrier),
        Some("surface") => return Some(Role::Surface),
        Some("fixture") => return Some(Role::Fixture),
        _ => {}
    }
    let grounds = matches!(tag("leisure"), Some("playground" | "schoolyard"))
        || matches!(
            tag("amenity"),
            Some("school" | "kindergarten" | "childcare")
        );
    match shape {
        Shape::Polygon(_) if grounds => Some(Role::Yard),
        Shape::Polygon(_) if tag("building").is_some() => Some(Role::Building),
        Shape::Polygon(_)
            if ["surface", "landuse", "leisure", "natural"]
                .iter()
                .any(|key| tag(key).is_some()) =>
        {
            Some(Role::Surface)
        }
        Shape::Line(_) if tag("barrier").is_some() => Some(Role::Barrier),
        Shape::Point(_) if !tags.is_empty() => Some(Role::Fixture),
        _ => None,
    }
}

/// Collections within collections deeper than this are nobody's yard.
const DEEPEST: usize = 8;

fn collect(geometry: &Value, into: &mut Vec<Shape>, depth: usize) -> usize {
    let coordinates = geometry.get("coordinates").unwrap_or(&Value::Null);
    let items = || {
        coordinates
            .as_array()
            .map(Vec::as_slice)
            .unwrap_or_default()
    };
    let mut push = |shape: Option<Shape>| match shape {
        Some(shape) => {
            into.push(shape);
            0
        }
        None => 1,
    };
    match geometry.get("type").and_then(Value::as_str) {
        Some("Point") => push(degrees(coordinates).map(Shape::Point)),
        Some("MultiPoint") => items()
            .iter()
            .map(|item| push(degrees(item).map(Shape::Point)))
            .sum(),
        Some("LineString") => push(line(coordinates, 2).map(Shape::Line)),
        Some("MultiLineString") => items()
            .iter()
            .map(|item| push(line(item, 2).map(Shape::Line)))
            .sum(),
        Some("Polygon") => push(rings(coordinates)),
        Some("MultiPolygon") => items().iter().map(|item| push(rings(item))).sum(),
        Some("GeometryCollection") if depth < DEEPEST => {
            let parts = geometry.get("geometries").and_then(Value::as_array);
            parts
                .into_iter()
                .flatten()
                .map(|part| collect(part, into, depth + 1))
                .sum()
        }
        _ => 1,
    }
}

fn rings(value: &Value) -> Option<Shape> {
    let rings: Option<Vec<_>> = value.as_array()?.iter().map(|ring| line(ring, 4)).collect();
    rings.filter(|rings| !rings.is_empty()).map(Shape::Polygon)
}

fn line(value: &Value, least: usize) -> Option<Vec<Degrees>> {
    let line: Option<Vec<_>> = value.as_array()?.iter().map(degrees).collect();
    line.filter(|line| line.len() >= least)
}

fn degrees(value: &Value) -> Option<Degrees> {
    let pair = value.as_array()?;
    let (longitude, latitude) = (pair.first()?.as_f64()?, pair.get(1)?.as_f64()?);
    let sound = longitude.abs() <= 180.0 && latitude.abs() <= 90.0;
    sound.then_some(Degrees {
        latitude,
        longitude,
    })
}
