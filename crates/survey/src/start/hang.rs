//! Parts that hang together only as a whole, and points that hang at all.

use super::Draft;
use super::Soft;
use crate::model::Place;

/// Poses what growth cannot reach; `false` when nothing could be posed.
pub(crate) fn hang(_soft: &Soft, _drafts: &mut Vec<Draft>, _placed: &mut [bool]) -> bool {
    false
}

/// Gives every point that is not fixed a place to draw it at.
pub(crate) fn dangle(_soft: &Soft, _at: &mut [Place], _placed: &mut [bool]) {}
