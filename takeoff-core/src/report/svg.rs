//! Ways and places of a drawing of a slope, as SVG writes them.
use super::markup::number;

/// The way of a pen over the slope; up the slope is up on paper.
#[derive(Default)]
pub(super) struct Pen {
    way: String,
    at: Option<[f64; 2]>,
}

impl Pen {
    /// Moves to a point.
    pub(super) fn to(mut self, u: f64, v: f64) -> Pen {
        self.way.push('M');
        number(u, &mut self.way);
        self.way.push(' ');
        number(-v, &mut self.way);
        self.at = Some([u, v]);
        self
    }

    /// Draws to a point.
    pub(super) fn line(mut self, u: f64, v: f64) -> Pen {
        let [from_u, from_v] = self.at.unwrap_or_default();
        if v == from_v {
            self.way.push('H');
            number(u, &mut self.way);
        } else if u == from_u {
            self.way.push('V');
            number(-v, &mut self.way);
        } else {
            self.way.push('L');
            number(u, &mut self.way);
            self.way.push(' ');
            number(-v, &mut self.way);
        }
        self.at = Some([u, v]);
        self
    }

    /// Draws a closed ring.
    pub(super) fn ring(self, points: &[[f64; 2]]) -> Pen {
        let Some((&[u, v], rest)) = points.split_first() else { return self };
        let mut pen = rest.iter().fold(self.to(u, v), |pen, &[u, v]| pen.line(u, v));
        pen.way.push('Z');
        pen
    }

    /// Draws a rectangle: left, lower, right, upper.
    pub(super) fn rectangle(self, [left, lower, right, upper]: [f64; 4]) -> Pen {
        self.ring(&[[left, lower], [right, lower], [right, upper], [left, upper]])
    }

    /// The way, for the attribute `d`.
    pub(super) fn way(self) -> String {
        self.way
    }
}

/// Closed rings, for the attribute `d`.
pub(super) fn rings(rings: &[Vec<[f64; 2]>]) -> String {
    rings.iter().fold(Pen::default(), |pen, ring| pen.ring(ring)).way()
}

/// A `transform` to a point of the slope, turned clockwise by so many degrees.
pub(super) fn placed(u: f64, v: f64, degrees: f64) -> String {
    let mut text = String::from("translate(");
    number(u, &mut text);
    text.push(' ');
    number(-v, &mut text);
    text.push(')');
    if degrees != 0.0 {
        text.push_str(" rotate(");
        number(degrees, &mut text);
        text.push(')');
    }
    text
}
