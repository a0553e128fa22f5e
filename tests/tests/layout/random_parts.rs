//! The parts of small jobs, made by chance.
use serde_json::{Map, Value, json};

use crate::dice::Dice;
use crate::small::{Array, Given, Zone, inches, length};

/// One array or two, one beside the other and so far apart that their posts are.
pub(crate) fn arrays(dice: &mut Dice) -> Vec<Array> {
    let mut arrays: Vec<Array> = Vec::new();
    let mut from = inches(dice.between(8, 20));
    for name in ["field", "wing"] {
        let array = array(dice, name, from);
        from = array.u + array.width() + array.shift[1] + array.least_distance + inches(26);
        arrays.push(array);
        if !dice.one_in(4) {
            break;
        }
    }
    arrays
}

fn array(dice: &mut Dice, name: &str, from: i64) -> Array {
    let module = [inches(dice.between(30, 42)), dice.between(inches(26), inches(40))];
    let (columns, rows) = (dice.between(1, 3), dice.pick(&[1, 1, 1, 2]));
    let shift = [dice.between(0, 32), dice.between(0, 32), dice.between(0, 12), dice.between(0, 12)];
    let shift = if dice.one_in(3) { [0; 4] } else { shift };
    let window = |dice: &mut Dice, from: i64| [from, from + dice.between(0, 16)];
    let low = dice.between(24, 64);
    let mut clamps = vec![window(dice, low)];
    if rows == 1 && dice.one_in(2) {
        let high = module[1] - dice.between(72, 112);
        clamps.push(window(dice, high));
    }
    let stagger = dice.pick(&[1, 1, 1, 1, 2]);
    let span = inches(dice.between(30, 64) * stagger);
    let overhang = dice.between(inches(12), inches(30)) * stagger;
    let u = from + shift[0];
    let v = inches(4) + dice.between(0, inches(24)) + shift[2];
    let zones = dice.one_in(4).then(|| {
        let [left, lower] = [u + dice.between(-160, 320), v + dice.between(-160, 160)];
        Zone {
            from: [left, lower],
            to: [left + dice.between(160, 640), lower + dice.between(160, 640)],
            span: span * 3 / 4,
            overhang: overhang * dice.between(3, 4) / 4,
        }
    });
    Array {
        name: name.to_owned(),
        u,
        v,
        module,
        columns,
        rows,
        gap: dice.between(0, 16),
        shift,
        clamps,
        span,
        overhang,
        zones: zones.into_iter().collect(),
        least_distance: if dice.one_in(2) { 0 } else { dice.between(32, 160) },
        stagger,
        blocking: dice.one_in(3),
    }
}

/// Evenly spaced, measured, crooked; now and then one is doubled, and one is missing.
pub(crate) fn rafters(dice: &mut Dice, width: i64) -> Vec<[i64; 2]> {
    let spacing = inches(dice.pick(&[12, 16, 16, 20, 24]));
    let first = dice.between(16, spacing);
    let off = dice.pick(&[0, 0, 16]);
    let crooked = dice.one_in(3);
    let mut rafters: Vec<[i64; 2]> = Vec::new();
    let mut at = first;
    while at < width - 32 {
        let lower = at + dice.between(-off, off);
        let upper = if crooked { at + dice.between(-24, 24) } else { lower };
        rafters.push([lower, upper]);
        at += spacing;
    }
    if dice.one_in(3) {
        let place = dice.between(0, rafters.len() as i64 - 1) as usize;
        let beside = 24 + dice.pick(&[0, 0, 1, 8]);
        rafters.insert(place + 1, rafters[place].map(|u| u + beside));
    }
    if dice.one_in(4) && rafters.len() > 3 {
        rafters.remove(dice.between(1, rafters.len() as i64 - 2) as usize);
    }
    rafters
}

/// A post beside the first array, and one that is fixed below it.
pub(crate) fn kept(dice: &mut Dice, arrays: &[Array], rafters: &[[i64; 2]]) -> Vec<Given> {
    let array = &arrays[0];
    let [left, right, down, up] = array.shift;
    let mut kept = Vec::new();
    if dice.one_in(2) {
        let (u, v) = (array.u - left - dice.between(8, 64), array.v + dice.between(0, array.height()));
        kept.push(Given { name: "beside".into(), u, v, fixed: None });
    }
    if dice.one_in(4) {
        let bands = array.bands();
        let rail = dice.between(0, bands.len() as i64 - 1) as usize;
        let [from, to] = bands[rail];
        let v = array.v + dice.between(from - down, to + up);
        let (first, last) = (array.u + right, array.u - left + array.width());
        let u = match rafters.iter().find(|[lower, _]| (first..=last).contains(lower)) {
            Some([lower, _]) if !dice.one_in(3) => *lower,
            _ => dice.between(first, last),
        };
        kept.push(Given { name: "fast".into(), u, v, fixed: Some((0, rail)) });
    }
    kept
}

pub(crate) fn tile(dice: &mut Dice) -> Value {
    let (length_16, cover, lap) =
        (dice.between(inches(12), inches(18)), dice.between(inches(8), inches(13)), dice.pick(&[0, 16, 24]));
    let mut tile = json!({
        "length": length(length_16), "cover": length(cover), "least_head_lap": length(dice.between(32, 48)),
        "thickness": length(dice.between(8, 16)), "held": dice.pick(&["nailed", "hung", "clipped", "nailed", "hung", "mortar"]),
    });
    if dice.one_in(6) {
        tile["pan_and_cover"] = json!({
            "pan_width": length(cover - dice.between(8, 24)), "cover_width": length(dice.between(48, 72)),
        });
    } else {
        tile["width"] = length(cover + lap).into();
        tile["lap_side"] = dice.pick(&["left", "right"]).into();
        if dice.one_in(4) {
            tile["profile"] = json!({ "shape": "sine", "rise": length(32), "wave": length(cover) });
        }
    }
    if dice.one_in(6) {
        tile["laps"] = "double".into();
    }
    tile
}

pub(crate) fn felt(dice: &mut Dice) -> Value {
    let mut felt = json!({
        "sheet_width": length(inches(dice.pick(&[18, 24, 36]))), "head_lap": length(dice.between(32, 96)),
        "bonded": dice.one_in(8),
    });
    if dice.one_in(2) {
        felt["roll_length"] = "72 ft".into();
    }
    felt
}

pub(crate) fn assembly(dice: &mut Dice) -> Value {
    let post = dice.between(16, 40);
    let mut assembly = json!({
        "post_diameter": length(post), "clearance": length(if dice.one_in(8) { dice.between(32, 72) } else { dice.between(0, 6) }),
        "axis": dice.pick(&["normal", "normal", "normal", "plumb"]),
        "deck_flashing": {
            "width": length(dice.between(128, 192)), "down": length(dice.between(48, 96)), "up": length(dice.between(80, 144)),
            "cone_diameter": length(post + dice.between(0, 16)),
            "dried_in": dice.pick(&["underlayment", "underlayment", "underlayment", "underlayment", "three_course"]),
        },
        "top_flashing": {
            "width": length(dice.between(192, 288)), "down": length(dice.between(64, 112)), "up": length(dice.between(128, 224)),
            "formed": dice.one_in(2),
        },
        "beads": [{ "where": "deck flange", "diameter": "3/8 in" }],
        "items": [{ "item": "lag", "count": 2 }, { "item": "screw", "count": 1 }],
        "blocking_items": [{ "item": "screw", "count": 6 }],
    });
    if dice.one_in(8) {
        // More than there is of the rafter on one side of its centre line.
        assembly["lag_edge_distance"] = "1 in".into();
    }
    if dice.one_in(5) {
        assembly["post_height"] = length(dice.between(24, 80)).into();
    }
    if dice.one_in(5) {
        assembly["deck_flashing"]["cone_height"] = length(dice.between(16, 64)).into();
    }
    assembly
}

/// All of a slope but its outline and what lies on it. The courses are fitted to the tile later.
pub(crate) fn slope(dice: &mut Dice) -> Value {
    let mut underlayment = json!({ "kind": "felt" });
    let first = dice.between(inches(8), inches(34));
    if dice.one_in(3) {
        let mut at = first;
        let lines = (0..8).map(|_| {
            at += dice.between(inches(10), inches(34));
            length(at)
        });
        underlayment["lap_lines"] = lines.collect::<Vec<_>>().into();
    } else {
        underlayment["first_lap_line"] = length(first).into();
    }
    let bond = match dice.between(0, 3) {
        0 => json!("straight"),
        1 => json!(["0", "1/3", "2/3"]),
        _ => json!("half"),
    };
    let mut setbacks = Map::new();
    for (edge, most) in [("eave", 120), ("ridge", 160), ("rake", 160), ("hole", 120)] {
        if dice.one_in(3) {
            setbacks.insert(edge.to_owned(), length(dice.between(0, most)).into());
        }
    }
    json!({
        "name": "south", "pitch": dice.pick(&["4:12", "5:12", "7:12"]), "tile": "tile",
        "courses": { "first_nose": length(-dice.between(0, 32)), "below_greatest": dice.between(0, 24) },
        "columns": { "first_joint": length(dice.between(0, 160)), "bond": bond },
        "underlayment": underlayment, "setbacks": setbacks, "setbacks_hold_flashing": dice.one_in(4),
    })
}

/// A price list, and what a staple costs in it.
pub(crate) fn prices(dice: &mut Dice) -> (Option<String>, f64) {
    if dice.one_in(6) {
        return (None, 0.0);
    }
    let mut text = "item,unit,pack,price,currency\n".to_owned();
    let mut staple = 0.0;
    for (item, unit, pack, least, most) in [
        ("lag", "each", 1, 50, 300),
        ("screw", "each", 100, 500, 3000),
        ("felt, patches", "sq ft", 100, 2000, 20000),
        ("felt, rolls", "each", 1, 3000, 20000),
        ("staple", "each", 100, 100, 2000),
        ("sealant cartridge", "each", 1, 400, 1200),
        ("blocking board", "ft", 8, 300, 3000),
        ("roof cement", "gal", 1, 1000, 4000),
        ("batten nail", "each", 100, 100, 1000),
        ("fastener for tile", "each", 100, 200, 2000),
        ("spare tile tile", "each", 1, 100, 2500),
        ("spare tile tile, cover", "each", 1, 100, 2500),
        ("spare tile tile, pan", "each", 1, 100, 2500),
    ] {
        if dice.one_in(6) {
            continue;
        }
        let cents = dice.between(least, most);
        text += &format!("\"{item}\",{unit},{pack},{}.{:02},USD\n", cents / 100, cents % 100);
        if item == "staple" {
            staple = cents as f64 / 100.0 / f64::from(pack);
        }
    }
    (Some(text), staple)
}

pub(crate) fn labour(dice: &mut Dice) -> Value {
    let mut minutes = Map::new();
    for action in [
        "lift",
        "loosen",
        "cut_hole",
        "cut_notch",
        "make_up",
        "patch",
        "three_course",
        "block",
        "batten",
        "set",
    ] {
        if !dice.one_in(4) {
            minutes.insert(action.to_owned(), dice.between(1, 30).into());
        }
    }
    json!({ "rate_per_hour": format!("{}.50", dice.between(30, 90)), "minutes": minutes })
}
