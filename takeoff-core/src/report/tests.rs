//! Checks of the reports.
mod chart;
mod drawing;
mod laid;
mod lines;
mod page;
mod rolls;
pub(super) mod sample;
mod screen;
mod sheets;
mod shift_map;
mod shown;

/// Names that people, or those who want to do harm, may write.
pub(super) const HOSTILE: [&str; 8] = [
    "=1+1",
    "-2 & <b>\"south\"</b>",
    "@cmd, 'A'",
    "\u{1b}[2J\u{7}ring",
    "two\nlines",
    "屋根の南側の長い名前屋根の南側の長い名前屋根の南側の長い名前屋根の南側の長い名前屋根の南側",
    "]]>\u{0}\u{ffff}\u{202e}",
    "a-name-without-a-single-space-that-is-longer-than-any-line-on-the-screen-can-be-and-then-some",
];
