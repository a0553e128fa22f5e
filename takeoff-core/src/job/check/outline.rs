//! The outline of a slope as a job file has it.
use crate::geometry::SlopePoint;
use crate::job::fields::collections::List;
use crate::job::fields::quantities::Point;
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Reader};
use crate::job::parse::document::At;
use crate::model::{Assumptions, HoleMeasures, Input, Outline, OutlineBuilder};

pub(crate) fn outline(
    slope: At,
    written: &raw::Slope,
    assumptions: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> Option<Outline> {
    let holes = written.holes.given().map_or(&[][..], Vec::as_slice).iter().map(|hole| {
        let Some(hole) = hole.get() else {
            return HoleMeasures { corners: Input::Unread, ..HoleMeasures::default() };
        };
        let name = hole.name.given().cloned();
        HoleMeasures { name, corners: ring(&hole.outline), corner_count: count(&hole.outline) }
    });
    let edges = match written.edges.optional() {
        Some(Some(edges)) => Input::Given(edges.iter().map(Field::input).collect()),
        Some(None) => Input::Missing,
        None => Input::Unread,
    };
    let builder = OutlineBuilder {
        corners: ring(&written.outline),
        corner_count: count(&written.outline),
        edges,
        holes: holes.collect(),
    };
    reader.judge(slope, assumptions, |judge| builder.judge(judge))
}

fn ring(field: &Field<List<Point>>) -> Input<Vec<SlopePoint>> {
    let corners =
        field.get().and_then(|corners| corners.iter().map(|corner| corner.get().copied()).collect());
    corners.map_or(Input::Unread, Input::Given)
}

fn count(field: &Field<List<Point>>) -> Option<usize> {
    field.get().map(Vec::len)
}
