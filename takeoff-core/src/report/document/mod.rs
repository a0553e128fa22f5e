//! Results as JSON documents, a record a line.
mod rows;

use serde::Serialize;

use crate::job::LaidJob;
use crate::layout::Layout;
use crate::order::Order;
use crate::takeoff::Takeoff;

use rows::Rows;

/// An order as `order.json` holds it.
pub fn order_document(order: &Order) -> String {
    json_text(order, 3)
}

/// A layout as `layout.json` holds it.
pub fn layout_document(layout: &Layout) -> String {
    json_text(layout, 4)
}

/// The job of a layout as a job file: a post a line.
pub fn laid_document(job: &LaidJob) -> String {
    json_text(job, 4)
}

/// A takeoff as `takeoff.json` holds it.
pub fn document(takeoff: &Takeoff) -> String {
    json_text(takeoff, 4)
}

/// JSON with a line end, laid out by [`Rows`]. What is serialised here has string keys and finite numbers only, so
/// that nothing can fail; if it ever did, the answer would be empty and not wrong.
pub(crate) fn json_text(value: &impl Serialize, open: usize) -> String {
    let mut bytes = Vec::new();
    let mut serializer = serde_json::Serializer::with_formatter(&mut bytes, Rows::new(open));
    let written = value.serialize(&mut serializer).ok().and_then(|()| String::from_utf8(bytes).ok());
    written.map(|text| text + "\n").unwrap_or_default()
}
