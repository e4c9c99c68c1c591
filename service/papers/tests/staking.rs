//! Lists for setting out and plans as DXF: what is written is what the answer says, in the
//! unit that is declared, and no label does more than stand there. The DXF is read back here
//! by a reader of its own; the gate lets a general library read it too.

use std::collections::{BTreeMap, BTreeSet};

use bearwell_engine::contract::{Answer, Call, Paper, Work, run};
use bearwell_engine::layout::{Outcome, PileLayout, Request};
use bearwell_engine::quantity::{Length, System};
use bearwell_engine::text::Label;
use bearwell_engine::trace::Trace;
use bearwell_papers::{piles_csv, plan_dxf, site_dxf, staking_csv, tape_csv};
use proptest::prelude::*;

type Answered = (Request, Answer<Outcome>);
type Draw = fn(&Request, &Answer<Outcome>, System, Paper) -> String;

fn request(name: &str) -> Request {
    let folder =
        std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../openapi/examples/pile-layout");
    let text = std::fs::read_to_string(folder.join(format!("{name}.json"))).expect("a file");
    let call: Call<Request> = serde_json::from_str(&text).expect("a request");
    call.request
}

fn answered(request: Request) -> Answered {
    let call = Call::from(request.clone());
    let answer = run::<PileLayout>(&call, Work::new(Trace::off(), None));
    (request, answer.unwrap_or_else(|r| panic!("refused: {r:?}")))
}

fn drawn(draw: Draw, (request, answer): &Answered, system: System) -> String {
    draw(request, answer, system, Paper::A4)
}

/// Lines of a table without quoted line ends, each as its fields.
fn rows(csv: &str) -> Vec<Vec<String>> {
    let lines = csv
        .strip_suffix("\r\n")
        .expect("a last line end")
        .split("\r\n");
    lines
        .map(|l| l.split(',').map(str::to_owned).collect())
        .collect()
}

#[test]
fn the_list_of_points_keeps_order_unit_and_decimals() {
    let linnet = answered(request("linnet-staking"));
    for system in [System::Si, System::UsCustomary] {
        let rows = rows(&drawn(staking_csv, &linnet, system));
        assert_eq!(
            rows[0].join(","),
            "point,northing [ft],easting [ft],elevation [ft],description"
        );
        assert_eq!(rows.len(), 25);
        for (row, pile) in rows[1..].iter().zip(&linnet.1.result.piles) {
            assert_eq!(row[0], pile.label);
            for field in &row[1..4] {
                let (_, decimals) = field.split_once('.').expect("a point");
                assert_eq!(decimals.len(), 3, "{field}");
                assert!(field.parse::<f64>().is_ok(), "{field}");
            }
            assert_eq!(row[4], "pile");
        }
    }
    let survey = answered(request("staking-survey-feet"));
    let rows = rows(&drawn(staking_csv, &survey, System::Si));
    assert_eq!(
        rows[0].join(","),
        "point,northing [ft_us_survey],easting [ft_us_survey],elevation [ft_us_survey],description"
    );
    assert!(
        rows.iter()
            .any(|r| r[1] == "410250.500" && r[2] == "2000000.000")
    );
    // nothing was said of elevations
    assert!(rows[1..].iter().all(|r| r[3].is_empty()));
}

#[test]
fn without_a_grid_there_are_no_points() {
    let plain = answered(request("linnet"));
    let text = drawn(staking_csv, &plain, System::Si);
    assert_eq!(text, "point,northing,easting,elevation,description\r\n");
    let text = drawn(tape_csv, &plain, System::Si);
    assert_eq!(text, "kind,beams,from,to,distance [m],distance_text\r\n");
    let read = Read::of(&drawn(site_dxf, &plain, System::Si));
    assert_eq!(read.kinds(), BTreeSet::from(["TEXT"]));
    assert!(read.texts("NOTE")[0].contains("No site grid"));
}

#[test]
fn labels_are_no_formulas() {
    let mut hostile = request("linnet-staking");
    let bearwell_engine::layout::PilePlacement::Given(given) = &mut hostile.piles else {
        panic!("given piles");
    };
    for (pile, label) in given.positions.iter_mut().zip(["=1+1", "-A2", "@x", "a;b"]) {
        pile.label = Some(Label(label.into()));
    }
    let hostile = answered(hostile);
    for (draw, first) in [(staking_csv as Draw, 0), (piles_csv, 0), (tape_csv, 3)] {
        let text = drawn(draw, &hostile, System::Si);
        for label in ["'=1+1", "'-A2", "'@x", "\"a;b\""] {
            assert!(text.contains(label), "{label}");
        }
        for row in rows(&text) {
            assert!(!row[first].starts_with(['=', '+', '-', '@']), "{row:?}");
        }
    }
}

#[test]
fn piles_stand_with_their_loads() {
    let linnet = answered(request("linnet-staking"));
    let rows = rows(&drawn(piles_csv, &linnet, System::UsCustomary));
    assert_eq!(
        rows[0].join(","),
        "pile,type,x [ft],y [ft],placed_by,compression [lbf],compression_combination,\
         tension [lbf],tension_combination,utilisation [1],x_text,y_text"
    );
    let a2 = rows.iter().find(|r| r[0] == "A2").expect("A2");
    let pile = linnet
        .1
        .result
        .piles
        .iter()
        .find(|p| p.label == "A2")
        .expect("A2");
    assert_eq!((a2[2].as_str(), a2[3].as_str()), ("7.25", "0"));
    assert_eq!(a2[4], "given");
    let pounds = pile.compression.demand.si() / 4.448_221_615_260_5;
    assert!((a2[5].parse::<f64>().expect("a number") / pounds - 1.0).abs() < 1e-8);
    assert_eq!(a2[10], "\"7'-3\"\"\"");
}

#[test]
fn the_tape_has_every_kind_of_distance() {
    let linnet = answered(request("linnet-staking"));
    let text = drawn(tape_csv, &linnet, System::UsCustomary);
    for line in [
        "running,A,A1,A2,7.25,\"7'-3\"\"\"",
        "gap,A,A2,A3,6.5,\"6'-6\"\"\"",
        "length,A,A1,A6,36,\"36'-0\"\"\"",
        "diagonal,A C,A1,C6,44.4072066,\"44'-4 7/8\"\"\"",
        "base,,A1,A6,36,\"36'-0\"\"\"",
        "tie,,A6,C1,44.4072066,\"44'-4 7/8\"\"\"",
    ] {
        assert!(text.contains(&format!("{line}\r\n")), "{line}\n{text}");
    }
}

/// Codes with their values, in order.
type Pairs = Vec<(u32, String)>;
/// What begins with a code 0: its section, its kind, its pairs.
type Thing = (String, String, Pairs);

/// A drawing as a plain reader sees it.
struct Read {
    header: BTreeMap<String, String>,
    /// Entities of the model: kind and pairs.
    entities: Vec<(String, Pairs)>,
}

impl Read {
    /// Reads a drawing and judges its form.
    fn of(text: &str) -> Self {
        assert!(text.is_ascii());
        let lines: Vec<&str> = text
            .strip_suffix('\n')
            .expect("a line end")
            .split('\n')
            .collect();
        assert_eq!(lines.len() % 2, 0);
        let pairs: Pairs = lines
            .chunks(2)
            .map(|p| (p[0].parse().expect("a code"), p[1].to_owned()))
            .collect();
        assert_eq!(pairs.last(), Some(&(0, "EOF".to_owned())));
        let mut header = BTreeMap::new();
        for pair in pairs.windows(2) {
            if pair[0].0 == 9 {
                header.insert(pair[0].1.clone(), pair[1].1.clone());
            }
        }
        let mut section = String::new();
        let mut things: Vec<Thing> = Vec::new();
        for (i, (code, value)) in pairs.iter().enumerate() {
            match (code, value.as_str()) {
                (0, "SECTION") => section = pairs[i + 1].1.clone(),
                (0, kind) => things.push((section.clone(), kind.to_owned(), Vec::new())),
                (999, _) => {}
                _ => {
                    if let Some(last) = things.last_mut() {
                        last.2.push((*code, value.clone()));
                    }
                }
            }
        }
        handles(&things, &header["$HANDSEED"]);
        counts(&things);
        let entities = things
            .into_iter()
            .filter(|t| t.0 == "ENTITIES" && t.1 != "ENDSEC");
        Self {
            header,
            entities: entities.map(|t| (t.1, t.2)).collect(),
        }
    }

    fn kinds(&self) -> BTreeSet<&str> {
        self.entities.iter().map(|e| e.0.as_str()).collect()
    }

    fn all(&self, kind: &str, layer: &str) -> Vec<&Pairs> {
        let own = self.entities.iter().filter(|e| e.0 == kind);
        own.map(|e| &e.1)
            .filter(|p| value(p, 8).is_some_and(|l| l.starts_with(layer)))
            .collect()
    }

    fn texts(&self, layer: &str) -> Vec<String> {
        let own = self.all("TEXT", layer).into_iter();
        own.map(|p| decoded(value(p, 1).expect("a text"))).collect()
    }

    fn places(&self, kind: &str, layer: &str) -> Vec<(f64, f64)> {
        let own = self.all(kind, layer).into_iter();
        let number = |p: &Pairs, code| {
            let text = value(p, code).expect("a coordinate");
            assert!(text.contains('.') && !text.contains('e'), "{text}");
            text.parse::<f64>().expect("a number")
        };
        own.map(|p| (number(p, 10), number(p, 20))).collect()
    }
}

fn value(pairs: &[(u32, String)], code: u32) -> Option<&str> {
    pairs.iter().find(|p| p.0 == code).map(|p| p.1.as_str())
}

/// Every handle stands once, every owner is there, and the next free one is above all.
fn handles(things: &[Thing], seed: &str) {
    let number = |t: &str| u32::from_str_radix(t, 16).expect("a handle");
    let mut seen = BTreeSet::new();
    for (section, kind, pairs) in things {
        let code = if kind == "DIMSTYLE" { 105 } else { 5 };
        if section == "HEADER" || matches!(kind.as_str(), "ENDSEC" | "ENDTAB" | "EOF") {
            continue;
        }
        let handle = value(pairs, code).unwrap_or_else(|| panic!("{kind} without a handle"));
        assert!(seen.insert(number(handle)), "{kind}: {handle} twice");
    }
    for (_, kind, pairs) in things {
        for (code, owner) in pairs {
            if matches!(code, 330 | 340 | 350) && owner != "0" {
                assert!(seen.contains(&number(owner)), "{kind}: {owner} is nowhere");
            }
        }
    }
    assert!(seen.last().expect("handles") < &number(seed));
}

/// Every table has as many entries as it says.
fn counts(things: &[Thing]) {
    for (i, (_, kind, pairs)) in things.iter().enumerate() {
        if kind == "TABLE" {
            let said = value(pairs, 70)
                .expect("a count")
                .parse::<usize>()
                .expect("a number");
            let after = things[i + 1..].iter();
            assert_eq!(after.take_while(|t| t.1 != "ENDTAB").count(), said);
        }
    }
}

/// A text with its numbered characters put back.
fn decoded(text: &str) -> String {
    let mut units: Vec<u16> = Vec::new();
    let mut rest = text;
    while let Some(c) = rest.chars().next() {
        match rest.strip_prefix("\\U+") {
            Some(after) => {
                units.push(u16::from_str_radix(&after[..4], 16).expect("a number"));
                rest = &after[4..];
            }
            None => {
                units.push(c as u16);
                rest = &rest[1..];
            }
        }
    }
    String::from_utf16(&units).expect("a text")
}

#[test]
fn the_plan_as_dxf_has_every_pile_where_the_answer_has_it() {
    for name in [
        "linnet-staking",
        "sizerin-staking",
        "linnet-search",
        "porch-uplift",
    ] {
        let answered = answered(request(name));
        for (system, code, metric) in [(System::Si, "6", "1"), (System::UsCustomary, "2", "0")] {
            let read = Read::of(&drawn(plan_dxf, &answered, system));
            assert_eq!(read.header["$INSUNITS"], code);
            assert_eq!(read.header["$MEASUREMENT"], metric);
            let piles = &answered.1.result.piles;
            let unit = Length::ROLE.unit(system);
            let want: Vec<(f64, f64)> = piles
                .iter()
                .map(|p| (unit.printed(p.at.x.si()), unit.printed(p.at.y.si())))
                .collect();
            assert_eq!(read.places("INSERT", "PILE"), want);
            let labels: Vec<_> = piles.iter().map(|p| p.label.clone()).collect();
            assert_eq!(read.texts("PILE_LABEL"), labels);
            let beams = &answered.1.result.beams;
            assert_eq!(read.all("LWPOLYLINE", "BEAM_CENTRE").len(), beams.len());
        }
    }
}

#[test]
fn the_plan_in_the_site_grid_is_in_the_grids_own_unit() {
    for (name, code, control) in [
        ("linnet-staking", "2", 3),
        ("sizerin-staking", "6", 2),
        ("staking-survey-feet", "21", 0),
    ] {
        let answered = answered(request(name));
        let staking = answered.1.result.staking.as_ref().expect("a staking");
        let texts = drawn(site_dxf, &answered, System::Si);
        // the unit of the answer is not that of the grid
        assert_eq!(texts, drawn(site_dxf, &answered, System::UsCustomary));
        let read = Read::of(&texts);
        assert_eq!(read.header["$INSUNITS"], code);
        let number = |t: &str| t.parse::<f64>().expect("a number");
        let want: Vec<(f64, f64)> = staking
            .points
            .iter()
            .map(|p| p.site.as_ref().expect("on site"))
            .map(|s| (number(&s.easting_text), number(&s.northing_text)))
            .collect();
        assert_eq!(read.places("INSERT", "PILE"), want);
        assert_eq!(read.places("POINT", "CONTROL").len(), control);
        // control points are drawn where the plan puts them, a survey's rounding from as sent
        let grid = staking.grid.as_ref().expect("a grid");
        for (at, point) in read
            .places("POINT", "CONTROL")
            .iter()
            .zip(grid.control.iter().flat_map(|c| &c.points))
        {
            let off = (at.0 - number(&point.site.easting_text)).abs();
            assert!(off < 0.01, "{}", point.label);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Whatever a label holds, the drawing stays a drawing and the label reads back.
    #[test]
    fn any_label_reads_back(label in "[^\\p{Cc}]{1,24}") {
        let mut request = request("staking-survey-feet");
        request.beams[0].label = Some(Label(label));
        // longer than any label that is drawn, so never the same
        request.beams[1].label = Some(Label("the other beam of this plan".into()));
        let answered = answered(request);
        let labels: Vec<_> = answered.1.result.piles.iter().map(|p| p.label.clone()).collect();
        let read = Read::of(&drawn(plan_dxf, &answered, System::Si));
        prop_assert_eq!(read.texts("PILE_LABEL"), labels);
    }
}
