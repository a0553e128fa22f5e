//! Random parts of small jobs.
use serde_json::{Map, Value, json};

use crate::rng::Rng;
use crate::small_job::{Array, GivenPost, Zone, inches, length};

/// One array or two, side by side, far enough apart that their posts keep every least distance.
pub(crate) fn arrays(rng: &mut Rng) -> Vec<Array> {
    let mut arrays: Vec<Array> = Vec::new();
    let mut from = inches(rng.between(8, 20));
    for name in ["field", "wing"] {
        let array = array(rng, name, from);
        from = array.u + array.width() + array.shift[1] + array.least_distance + inches(26);
        arrays.push(array);
        if !rng.one_in(4) {
            break;
        }
    }
    arrays
}

fn array(rng: &mut Rng, name: &str, from: i64) -> Array {
    let module = [inches(rng.between(30, 42)), rng.between(inches(26), inches(40))];
    let (columns, rows) = (rng.between(1, 3), rng.pick(&[1, 1, 1, 2]));
    let shift = [rng.between(0, 32), rng.between(0, 32), rng.between(0, 12), rng.between(0, 12)];
    let shift = if rng.one_in(3) { [0; 4] } else { shift };
    let window = |rng: &mut Rng, from: i64| [from, from + rng.between(0, 16)];
    let low = rng.between(24, 64);
    let mut clamps = vec![window(rng, low)];
    if rows == 1 && rng.one_in(2) {
        let high = module[1] - rng.between(72, 112);
        clamps.push(window(rng, high));
    }
    let stagger = rng.pick(&[1, 1, 1, 1, 2]);
    let span = inches(rng.between(30, 64) * stagger);
    let overhang = rng.between(inches(12), inches(30)) * stagger;
    let u = from + shift[0];
    let v = inches(4) + rng.between(0, inches(24)) + shift[2];
    let zones = rng.one_in(4).then(|| {
        let [left, lower] = [u + rng.between(-160, 320), v + rng.between(-160, 160)];
        Zone {
            from: [left, lower],
            to: [left + rng.between(160, 640), lower + rng.between(160, 640)],
            span: span * 3 / 4,
            overhang: overhang * rng.between(3, 4) / 4,
        }
    });
    Array {
        name: name.to_owned(),
        u,
        v,
        module,
        columns,
        rows,
        gap: rng.between(0, 16),
        shift,
        clamps,
        span,
        overhang,
        zones: zones.into_iter().collect(),
        least_distance: if rng.one_in(2) { 0 } else { rng.between(32, 160) },
        stagger,
        blocking: rng.one_in(3),
    }
}

/// Rafters that are evenly spaced, measured or crooked; at times one is doubled or missing.
pub(crate) fn rafters(rng: &mut Rng, width: i64) -> Vec<[i64; 2]> {
    let spacing = inches(rng.pick(&[12, 16, 16, 20, 24]));
    let first = rng.between(16, spacing);
    let off = rng.pick(&[0, 0, 16]);
    let crooked = rng.one_in(3);
    let mut rafters: Vec<[i64; 2]> = Vec::new();
    let mut at = first;
    while at < width - 32 {
        let lower = at + rng.between(-off, off);
        let upper = if crooked { at + rng.between(-24, 24) } else { lower };
        rafters.push([lower, upper]);
        at += spacing;
    }
    if rng.one_in(3) {
        let place = rng.between(0, rafters.len() as i64 - 1) as usize;
        let beside = 24 + rng.pick(&[0, 0, 1, 8]);
        rafters.insert(place + 1, rafters[place].map(|u| u + beside));
    }
    if rng.one_in(4) && rafters.len() > 3 {
        rafters.remove(rng.between(1, rafters.len() as i64 - 2) as usize);
    }
    rafters
}

/// A post beside the first array, and a fixed one below it.
pub(crate) fn kept(rng: &mut Rng, arrays: &[Array], rafters: &[[i64; 2]]) -> Vec<GivenPost> {
    let array = &arrays[0];
    let [left, right, down, up] = array.shift;
    let mut kept = Vec::new();
    if rng.one_in(2) {
        let (u, v) = (array.u - left - rng.between(8, 64), array.v + rng.between(0, array.height()));
        kept.push(GivenPost { name: "beside".into(), u, v, fixed: None });
    }
    if rng.one_in(4) {
        let windows = array.windows();
        let rail = rng.between(0, windows.len() as i64 - 1) as usize;
        let [from, to] = windows[rail];
        let v = array.v + rng.between(from - down, to + up);
        let (first, last) = (array.u + right, array.u - left + array.width());
        let u = match rafters.iter().find(|[lower, _]| (first..=last).contains(lower)) {
            Some([lower, _]) if !rng.one_in(3) => *lower,
            _ => rng.between(first, last),
        };
        kept.push(GivenPost { name: "fast".into(), u, v, fixed: Some((0, rail)) });
    }
    kept
}

pub(crate) fn tile(rng: &mut Rng) -> Value {
    let (length_16, cover, lap) =
        (rng.between(inches(12), inches(18)), rng.between(inches(8), inches(13)), rng.pick(&[0, 16, 24]));
    let mut tile = json!({
        "length": length(length_16), "cover": length(cover), "least_head_lap": length(rng.between(32, 48)),
        "thickness": length(rng.between(8, 16)), "held": rng.pick(&["nailed", "hung", "clipped", "nailed", "hung", "mortar"]),
    });
    if rng.one_in(6) {
        tile["pan_and_cover"] = json!({
            "pan_width": length(cover - rng.between(8, 24)), "cover_width": length(rng.between(48, 72)),
        });
    } else {
        tile["width"] = length(cover + lap).into();
        tile["lap_side"] = rng.pick(&["left", "right"]).into();
        if rng.one_in(4) {
            tile["profile"] = json!({ "shape": "sine", "rise": length(32), "wave": length(cover) });
        }
    }
    if rng.one_in(6) {
        tile["laps"] = "double".into();
    }
    tile
}

pub(crate) fn felt(rng: &mut Rng) -> Value {
    let mut felt = json!({
        "sheet_width": length(inches(rng.pick(&[18, 24, 36]))), "head_lap": length(rng.between(32, 96)),
        "bonded": rng.one_in(8),
    });
    if rng.one_in(2) {
        felt["roll_length"] = "72 ft".into();
    }
    felt
}

pub(crate) fn assembly(rng: &mut Rng) -> Value {
    let post = rng.between(16, 40);
    let mut assembly = json!({
        "post_diameter": length(post), "clearance": length(if rng.one_in(8) { rng.between(32, 72) } else { rng.between(0, 6) }),
        "axis": rng.pick(&["normal", "normal", "normal", "plumb"]),
        "deck_flashing": {
            "width": length(rng.between(128, 192)), "down": length(rng.between(48, 96)), "up": length(rng.between(80, 144)),
            "cone_diameter": length(post + rng.between(0, 16)),
            "dried_in": rng.pick(&["underlayment", "underlayment", "underlayment", "underlayment", "three_course"]),
        },
        "top_flashing": {
            "width": length(rng.between(192, 288)), "down": length(rng.between(64, 112)), "up": length(rng.between(128, 224)),
            "formed": rng.one_in(2),
        },
        "beads": [{ "where": "deck flange", "diameter": "3/8 in" }],
        "items": [{ "item": "lag", "count": 2 }, { "item": "screw", "count": 1 }],
        "blocking_items": [{ "item": "screw", "count": 6 }],
    });
    if rng.one_in(8) {
        // More than half of the rafter: its posts take boards.
        assembly["lag_edge_distance"] = "1 in".into();
    }
    if rng.one_in(5) {
        assembly["post_height"] = length(rng.between(24, 80)).into();
    }
    if rng.one_in(5) {
        assembly["deck_flashing"]["cone_height"] = length(rng.between(16, 64)).into();
    }
    assembly
}

/// A slope without its outline, posts and arrays. `fit_exposure` fits its courses to the tile.
pub(crate) fn slope(rng: &mut Rng) -> Value {
    let mut underlayment = json!({ "kind": "felt" });
    let first = rng.between(inches(8), inches(34));
    if rng.one_in(3) {
        let mut at = first;
        let lines = (0..8).map(|_| {
            at += rng.between(inches(10), inches(34));
            length(at)
        });
        underlayment["lap_lines"] = lines.collect::<Vec<_>>().into();
    } else {
        underlayment["first_lap_line"] = length(first).into();
    }
    let bond = match rng.between(0, 3) {
        0 => json!("straight"),
        1 => json!(["0", "1/3", "2/3"]),
        _ => json!("half"),
    };
    let mut setbacks = Map::new();
    for (edge, most) in [("eave", 120), ("ridge", 160), ("rake", 160), ("hole", 120)] {
        if rng.one_in(3) {
            setbacks.insert(edge.to_owned(), length(rng.between(0, most)).into());
        }
    }
    json!({
        "name": "south", "pitch": rng.pick(&["4:12", "5:12", "7:12"]), "tile": "tile",
        "courses": { "first_nose": length(-rng.between(0, 32)), "below_greatest": rng.between(0, 24) },
        "columns": { "first_joint": length(rng.between(0, 160)), "bond": bond },
        "underlayment": underlayment, "setbacks": setbacks, "setbacks_hold_flashing": rng.one_in(4),
    })
}

/// A price list, and its price of one staple.
pub(crate) fn prices(rng: &mut Rng) -> (Option<String>, f64) {
    if rng.one_in(6) {
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
        if rng.one_in(6) {
            continue;
        }
        let cents = rng.between(least, most);
        text += &format!("\"{item}\",{unit},{pack},{}.{:02},USD\n", cents / 100, cents % 100);
        if item == "staple" {
            staple = cents as f64 / 100.0 / f64::from(pack);
        }
    }
    (Some(text), staple)
}

pub(crate) fn labour(rng: &mut Rng) -> Value {
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
        if !rng.one_in(4) {
            minutes.insert(action.to_owned(), rng.between(1, 30).into());
        }
    }
    json!({ "rate_per_hour": format!("{}.50", rng.between(30, 90)), "minutes": minutes })
}
