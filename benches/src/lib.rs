//! Jobs for the benchmarks, made from a number: one question a file in `benches/`.
use std::fmt::Write;

/// A gable of `columns × courses` tiles, each 13 × 16 1/2 in, 12 in to the joint and exposed 13 1/4 in, with
/// `posts` posts spread over it, the same for the same numbers.
pub fn gable(columns: u64, courses: u64, posts: u64) -> String {
    let (width, height) = (columns * 12_000, courses * 13_250);
    let mut state = 0x9E37_79B9_7F4A_7C15_u64;
    // SplitMix64 (Steele, Lea, Flood 2014).
    let mut random = move |below: u64| {
        state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = state;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        (z ^ (z >> 31)) % below
    };
    let thousandths = |inches: u64| format!("{}.{:03} in", inches / 1000, inches % 1000);
    let mut list = String::new();
    for i in 0..posts {
        let (u, v) = (12_000 + random(width - 24_000), 14_000 + random(height - 28_000));
        let comma = if i == 0 { "" } else { "," };
        let (u, v) = (thousandths(u), thousandths(v));
        // Writing to a String can't fail.
        let _ = write!(list, r#"{comma}{{"name":"P{i}","assembly":"post","u":"{u}","v":"{v}"}}"#);
    }
    let (width, height) = (thousandths(width), thousandths(height));
    format!(
        r#"{{"format":"tilepost-job/1","name":"benchmark",
"tiles":{{"flat":{{"length":"16 1/2 in","width":"13 in","cover":"12 in","least_head_lap":"3 in","thickness":"1 in",
"lap_side":"left","held":"nailed","profile":{{"shape":"flat"}}}}}},
"underlayments":{{"felt":{{"sheet_width":"36 in","head_lap":"2 in"}}}},
"assemblies":{{"post":{{"post_diameter":"1 1/2 in","clearance":"1/4 in","axis":"normal",
"deck_flashing":{{"width":"10 in","down":"4 in","up":"7 in","cone_diameter":"2 in"}},
"top_flashing":{{"width":"16 in","down":"6 in","up":"11 in"}},
"beads":[{{"where":"deck flange","diameter":"3/8 in"}}],"items":[{{"item":"lag screw","count":2}}]}}}},
"slopes":[{{"name":"south","pitch":"5:12","outline":[["0","0"],["{width}","0"],["{width}","{height}"],["0","{height}"]],
"edges":["eave","rake","ridge","rake"],"tile":"flat",
"courses":{{"first_nose":"0","exposure":"13 1/4 in"}},"columns":{{"first_joint":"0","bond":"half"}},
"underlayment":{{"kind":"felt","first_lap_line":"34 in"}},"posts":[{list}]}}]}}"#
    )
}

/// A gable with `arrays` arrays of `rails` rails (an even number), one above the other and each over all of `rafters`
/// rafters 24 in apart, or as far off that as a tape finds them; free to move 12 in each way.
pub fn arrays(arrays: u64, rails: u64, rafters: u64, measured: bool) -> String {
    let rows = rails / 2;
    let columns = (24 * rafters - 48) / 45;
    let tall = rows * 69 + 26;
    let (width, height) = (24 * rafters + 24, arrays * tall + 48);
    let mut list = String::new();
    for i in 0..arrays {
        let comma = if i == 0 { "" } else { "," };
        let v = 24 + 13 + i * tall;
        // Writing to a String can't fail.
        let _ = write!(
            list,
            r#"{comma}{{"name":"A{i}","u":"36 in","v":"{v} in","module_width":"44 in","module_height":"68 in",
"columns":{columns},"rows":{rows},"column_gap":"1 in","row_gap":"1 in",
"shift":{{"left":"12 in","right":"12 in","down":"12 in","up":"12 in"}},
"rails":{{"assembly":"post","clamps":[["10 in","18 in"],["50 in","58 in"]],"greatest_span":"72 in",
"greatest_overhang":"24 in"}}}}"#
        );
    }
    let off = |i: u64| if measured { (i * 7919) % 31 } else { 15 };
    let centres: Vec<String> =
        (0..rafters).map(|i| format!("\"{} {}/16 in\"", 23 + 24 * i + off(i) / 16, off(i) % 16)).collect();
    let rafters = format!(r#""rafters":{{"at":[{}],"width":"1 1/2 in"}},"#, centres.join(","));
    let arrays = format!(r#"{rafters}"arrays":[{list}]"#);
    let job = gable(1, 1, 0);
    let outline =
        format!(r#"[["0","0"],["{width} in","0"],["{width} in","{height} in"],["0","{height} in"]]"#);
    let bid = r#""bid":{"currency":"USD","labour":{"rate_per_hour":"68.50","minutes":{"lift":2.5,"loosen":0.5,
"cut_hole":5,"cut_notch":7,"patch":12,"block":20,"set":18}}},"slopes""#;
    let posts = r#""posts":[]"#;
    let start = job.find("[[").unwrap_or_default();
    let end = job.find("]],").map_or(start, |end| end + 2);
    let job = format!("{}{outline}{}", &job[..start], &job[end..]);
    job.replacen(posts, &arrays, 1).replacen("\"slopes\"", bid, 1)
}
