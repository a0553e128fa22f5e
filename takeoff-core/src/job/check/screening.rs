//! Blocking, factors, loads and wind of a screening.
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Reader};
use crate::model::{Assumptions, BlockingWood, Loads, ScreeningInput, Wind, WindEquation};
use crate::units::{Pressure, Speed};

/// The wood of blocking boards.
pub(crate) fn blocking(field: &Field<Option<raw::Blocking>>) -> Option<Option<BlockingWood>> {
    let Some(written) = field.optional()? else {
        return Some(None);
    };
    Some(Some(BlockingWood {
        width: *written.width.get()?,
        depth: *written.depth.get()?,
        specific_gravity: *written.specific_gravity.get()?,
    }))
}

/// Factors, loads and wind, if the job asks for a screening.
pub(crate) fn screening(
    field: &Field<Option<raw::Screening>>,
    assumptions: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> Option<Option<Loads>> {
    let Some(written) = field.optional()? else {
        return Some(None);
    };
    let mut rows = Inputs { assumptions, list: Vec::new() };
    let c_d =
        rows.factor("C_D", "load duration factor", written.c_d.given(), 1.6, "NDS 2018, table 2.3.2: wind");
    let c_m = rows.factor(
        "C_M",
        "wet service factor",
        written.c_m.given(),
        1.0,
        "NDS 2018, table 11.3.3: 19 % moisture or less; from memory",
    );
    let c_t = rows.factor(
        "C_t",
        "temperature factor",
        written.c_t.given(),
        1.0,
        "NDS 2018, table 11.3.4: up to 100 °F; from memory",
    );
    let combination = "ASCE 7-16, 2.4.1: 0.6 D + 0.6 W";
    let uplift_factor =
        rows.factor("factor of W", "what uplift counts for", written.uplift_factor.given(), 0.6, combination);
    let dead_factor = rows.factor(
        "factor of D",
        "what the dead load counts for",
        written.dead_factor.given(),
        0.6,
        combination,
    );
    let dead_load = rows.pressure(
        "D",
        "dead load, square to the roof",
        written.dead_load.given(),
        Pressure::default(),
        "nothing holds down unless the job says so",
    );
    let wind = wind(&written.wind, &mut rows, reader)?;
    let inputs = rows.list;
    Some(Some(Loads { c_d, c_m, c_t, uplift_factor, dead_factor, dead_load, wind, inputs }))
}

fn wind(field: &Field<raw::Wind>, rows: &mut Inputs<'_>, reader: &mut Reader<'_>) -> Option<Wind> {
    let written = field.get()?;
    let used = [written.pressure.is_given(), written.equation.is_given()];
    if reader.one_way(field.at, used, "`pressure` or `equation`")? == 0 {
        let pressure = *written.pressure.given()?;
        let what = "uplift on the array, before the load combination";
        return Some(Wind::Pressure(rows.pressure("p", what, Some(&pressure), pressure, "")));
    }
    let written = written.equation.given()?;
    let (speed, kz, gcp) = (*written.speed.get()?, *written.kz.get()?, *written.gcp.get()?);
    let published = "ASCE 7-16, 26.10-1";
    Some(Wind::Equation(WindEquation {
        speed: rows.speed("V", "basic wind speed", speed),
        kz: rows.factor("Kz", "exposure coefficient", Some(&kz), kz, ""),
        kzt: rows.factor(
            "Kzt",
            "topographic factor",
            written.kzt.given(),
            1.0,
            "ASCE 7-16, 26.8: flat ground",
        ),
        kd: rows.factor("Kd", "directionality factor", written.kd.given(), 0.85, "ASCE 7-16, table 26.6-1"),
        ke: rows.factor("Ke", "ground elevation factor", written.ke.given(), 1.0, published),
        gcp: rows.factor("GCp", "external pressure coefficient", Some(&gcp), gcp, ""),
        gamma_e: rows.factor(
            "γ_E",
            "array edge factor",
            written.gamma_e.given(),
            1.5,
            "ASCE 7-16, 29.4.4: exposed modules",
        ),
        gamma_a: written
            .gamma_a
            .given()
            .map(|gamma_a| rows.factor("γ_a", "pressure equalisation factor", Some(gamma_a), *gamma_a, "")),
        least: rows.pressure(
            "least p",
            "least uplift on the array",
            written.least_pressure.given(),
            Pressure::from_psf(16.0),
            "ASCE 7-16, 30.2.2; from memory",
        ),
    }))
}

/// The inputs of a screening, listed as they are taken; each is an assumption too.
struct Inputs<'a> {
    assumptions: &'a mut Assumptions,
    list: Vec<ScreeningInput>,
}

impl Inputs<'_> {
    fn factor(&mut self, symbol: &str, what: &str, given: Option<&f64>, usual: f64, source: &str) -> f64 {
        let number = *given.unwrap_or(&usual);
        self.add(symbol, what, (number, ""), number.to_string(), given.map_or(Some(source), |_| None));
        number
    }

    fn pressure(
        &mut self,
        symbol: &str,
        what: &str,
        given: Option<&Pressure>,
        usual: Pressure,
        source: &str,
    ) -> Pressure {
        let pressure = *given.unwrap_or(&usual);
        let shown = self.assumptions.display().pressure(pressure);
        self.add(symbol, what, (pressure.pa(), "Pa"), shown, given.map_or(Some(source), |_| None));
        pressure
    }

    fn speed(&mut self, symbol: &str, what: &str, speed: Speed) -> Speed {
        let shown = self.assumptions.display().speed(speed);
        self.add(symbol, what, (speed.m_s(), "m/s"), shown, None);
        speed
    }

    /// `source` where it is a default.
    fn add(&mut self, symbol: &str, what: &str, in_unit: (f64, &str), value: String, source: Option<&str>) {
        self.assumptions.add(format!("{what}, {symbol}"), value.clone(), source.is_none());
        let (number, unit) = in_unit;
        let [symbol, what, unit] = [symbol, what, unit].map(str::to_owned);
        let source = source.map(str::to_owned);
        self.list.push(ScreeningInput { symbol, what, value, number, unit, source });
    }
}
