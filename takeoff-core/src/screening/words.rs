//! What is said of every screening.

/// What it is and what it is not.
pub const NOTE: &str = "A screening of lag screws in withdrawal against wind uplift, from the inputs listed: it is \
     no design and no approval. Attachment, wind loads and structure follow the local code and are for a licensed engineer \
     to decide.";

/// What is computed, with its sources.
pub const FORMULAS: [&str; 5] = [
    "withdrawal W = 1800 G^1.5 D^0.75, lbf per inch of thread in the wood, tip left out (NDS 2018, 12.2-1)",
    "resistance = W × C_D × C_M × C_t × thread × lags (NDS 2018, table 11.3.1)",
    "uplift = (0.6 p − 0.6 D) × tributary area, with the factors listed for 0.6 (ASCE 7-16, 2.4.1)",
    "where p is not given: p = q_h (GCp) γ_E γ_a, q_h = 0.00256 Kz Kzt Kd Ke V², γ_a = 1.2 − 0.4 log10 A from 0.4 to 0.8 \
     (ASCE 7-16, 29.4-7, 26.10-1, figure 29.4-8)",
    "asked: 1.5 D to the edge, 4 D to the end and from lag to lag (NDS 2018, table 12.5.1E, from memory)",
];

/// What it does not look at.
pub const NOT_COVERED: [&str; 6] = [
    "the steel: tension in the lag's root, pull-through at its head, the post and the rails",
    "prying, and bending from the height of the post",
    "load along the slope, snow, and loads that press down",
    "the roof's structure: rafters, sheathing, the nails of a blocking board, the way down to the ground",
    "the zones of the roof: one coefficient holds for all arrays",
    "wood that is split, decayed or otherwise unlike its grade, and lags driven without a pilot hole or overdriven",
];
