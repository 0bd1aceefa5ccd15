//! What a shape is painted with: attributes, style sheets and inline styles, one over the
//! other as CSS has it.

use roxmltree::Node;
use simplecss::{AttributeOperator, DeclarationTokenizer, Element, PseudoClass, StyleSheet};

/// The style sheets of a document.
pub struct Sheets<'a>(StyleSheet<'a>);

struct Matched<'a, 'i>(Node<'a, 'i>);

impl Element for Matched<'_, '_> {
    fn parent_element(&self) -> Option<Self> {
        self.0.parent_element().map(Matched)
    }

    fn prev_sibling_element(&self) -> Option<Self> {
        self.0.prev_sibling_element().map(Matched)
    }

    fn has_local_name(&self, name: &str) -> bool {
        self.0.tag_name().name() == name
    }

    fn attribute_matches(&self, name: &str, operator: AttributeOperator<'_>) -> bool {
        self.0
            .attribute(name)
            .is_some_and(|value| operator.matches(value))
    }

    fn pseudo_class_matches(&self, class: PseudoClass<'_>) -> bool {
        matches!(class, PseudoClass::FirstChild) && self.0.prev_sibling_element().is_none()
    }
}

/// Properties that a presentation attribute may set too.
const PROPERTIES: [&str; 19] = [
    "clip-path",
    "clip-rule",
    "color",
    "display",
    "fill",
    "fill-opacity",
    "fill-rule",
    "filter",
    "mask",
    "opacity",
    "stop-color",
    "stroke",
    "stroke-dasharray",
    "stroke-dashoffset",
    "stroke-linecap",
    "stroke-linejoin",
    "stroke-miterlimit",
    "stroke-opacity",
    "stroke-width",
];

impl<'a> Sheets<'a> {
    /// All `style` elements of a document, in order.
    pub fn of(document: &'a roxmltree::Document<'_>) -> Sheets<'a> {
        let mut sheet = StyleSheet::new();
        let texts = document
            .descendants()
            .filter(|node| node.tag_name().name() == "style")
            .filter(|node| node.attribute("type").is_none_or(|kind| kind == "text/css"))
            .flat_map(|node| node.children().filter_map(|child| child.text()));
        for text in texts {
            sheet.parse_more(text);
        }
        Sheets(sheet)
    }

    /// Every declaration on an element, the one that counts last: later ones override.
    pub fn declared<'n>(&self, node: Node<'n, '_>) -> Vec<(&'n str, &'n str)>
    where
        'a: 'n,
    {
        let mut plain = Vec::new();
        let mut important = Vec::new();
        for attribute in node.attributes() {
            let known = PROPERTIES.iter().chain(&[
                "visibility",
                "marker-start",
                "marker-mid",
                "marker-end",
            ]);
            if let Some(name) = known.into_iter().find(|name| **name == attribute.name()) {
                plain.push((*name, attribute.value()));
            }
        }
        for rule in &self.0.rules {
            if rule.selector.matches(&Matched(node)) {
                for one in &rule.declarations {
                    let into = if one.important {
                        &mut important
                    } else {
                        &mut plain
                    };
                    into.push((one.name, one.value));
                }
            }
        }
        for one in DeclarationTokenizer::from(node.attribute("style").unwrap_or_default()) {
            let into = if one.important {
                &mut important
            } else {
                &mut plain
            };
            into.push((one.name, one.value));
        }
        plain.extend(important);
        plain
    }
}
