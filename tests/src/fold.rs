//! JSON with a row a line.

/// How far the rows of the lists in a slope are indented.
const ROW: usize = 8;

/// Indented JSON with each row of a slope's lists (a post, a cut, a tile) on one line, so that a difference
/// shows which. Not a sign of it changes, besides line ends and the space round them.
///
/// ```
/// let text = "{\n        \"row\": {\n          \"u\": 1,\n          \"v\": 2\n        }\n}\n";
/// assert_eq!(tilepost_tests::fold(text), "{\n        \"row\": {\"u\": 1, \"v\": 2}\n}\n");
/// ```
pub fn fold(json: &str) -> String {
    let mut folded = String::new();
    let mut inside = false;
    for line in json.lines() {
        let row = line.trim_start();
        let deeper = line.len() - row.len() > ROW;
        let closes = inside && !deeper;
        if deeper || closes {
            if folded.ends_with(',') {
                folded.push(' ');
            }
            folded.push_str(row);
        } else {
            if !folded.is_empty() {
                folded.push('\n');
            }
            folded.push_str(line);
        }
        inside = deeper;
    }
    folded + "\n"
}
