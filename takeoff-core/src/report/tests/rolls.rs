//! The drawing of the cutting plan, read back by an XML reader.
use roxmltree::Document;

use super::super::roll_plan;
use super::sample;

#[test]
fn every_piece_is_drawn_once_in_its_place() {
    let mut drawn = 0;
    for takeoff in sample::all() {
        for (number, plan) in takeoff.rolls.iter().enumerate() {
            let svg = roll_plan(plan, number, &takeoff.job, takeoff.display);
            let document = Document::parse(&svg).unwrap();
            let of = |node: roxmltree::Node<'_, '_>, name: &str| node.attribute(name).unwrap().to_owned();
            let groups = document.descendants().filter(|node| node.has_attribute("data-patch"));
            let mut found: Vec<[String; 3]> = groups
                .map(|node| ["data-patch", "data-start-mm", "data-edge-mm"].map(|name| of(node, name)))
                .collect();
            let mut asked: Vec<[String; 3]> = plan
                .pieces
                .iter()
                .map(|piece| [piece.patch.clone(), piece.start_mm.to_string(), piece.edge_mm.to_string()])
                .collect();
            found.sort();
            asked.sort();
            assert_eq!(found, asked, "{}", plan.underlayment);
            drawn += found.len();
        }
    }
    assert!(drawn > 5, "nothing was drawn");
}
