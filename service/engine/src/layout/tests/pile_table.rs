//! The piles as a table against the same piles in rows, as both are printed.

use serde_json::{Value, json};

use super::{answer, example};
use crate::contract::{Answer, Call};
use crate::layout::{Outcome, ReactionDetail, Request};
use crate::quantity::{In, Presentation, System};

fn printed(call: &Call<Request>, system: System) -> Value {
    let answer: Answer<Outcome> = answer(call).expect("it answers");
    let text = In(Presentation::Printed(system), &answer).text();
    serde_json::from_str(&text.expect("it prints")).expect("it reads")
}

/// The number of a name in a list of the answer.
fn number(list: &Value, name: &Value, of: impl Fn(&Value) -> Value) -> Value {
    let list = list.as_array().expect("a list");
    json!(list.iter().position(|entry| of(entry) == *name))
}

#[test]
fn the_table_says_what_the_rows_say() {
    let names = [
        "linnet-springs",
        "linnet-line-on-rock",
        "porch-uplift",
        "pattern-live-load",
        "sizerin-search",
    ];
    for (name, system) in names
        .into_iter()
        .flat_map(|n| [(n, System::Si), (n, System::UsCustomary)])
    {
        let mut call = example(name);
        call.request.reaction_detail = None;
        let rows = printed(&call, system);
        call.request.reaction_detail = Some(ReactionDetail::Table);
        let tabled = printed(&call, system);
        for same in ["verdict", "verdict_reasons", "checks", "warnings"] {
            assert_eq!(rows[same], tabled[same], "{name}: {same}");
        }
        let (rows, tabled) = (&rows["result"], &tabled["result"]);
        for same in ["beams", "combinations", "supports", "spacing", "search"] {
            assert_eq!(rows[same], tabled[same], "{name}: {same}");
        }
        assert_eq!(tabled["piles"], json!([]));
        assert_eq!(rows["pile_table"], Value::Null);
        let table = &tabled["pile_table"];
        let springs = rows["supports"].as_array().map(Vec::len) == Some(2);
        let units: Vec<&Value> = table["columns"]
            .as_array()
            .unwrap()
            .iter()
            .map(|c| &c["unit"])
            .collect();
        let piles = rows["piles"].as_array().expect("rows");
        assert_eq!(table["rows"].as_array().map(Vec::len), Some(piles.len()));
        for (i, pile) in piles.iter().enumerate() {
            assert_eq!(table["labels"][i], pile["label"]);
            let mut want = vec![pile["at"]["x"].clone(), pile["at"]["y"].clone()];
            for side in ["compression", "tension"] {
                let own = &pile[side];
                let combinations = &tabled["combinations"];
                want.extend([
                    own["demand"].clone(),
                    number(combinations, &own["combination"], |c| c["name"].clone()),
                    number(&tabled["supports"], &own["supports"], Value::clone),
                ]);
            }
            if springs {
                want.push(pile["settlement"].clone());
            }
            let row = table["rows"][i].as_array().expect("a row");
            assert_eq!((row.len(), units.len()), (want.len(), want.len()), "{name}");
            for ((cell, unit), want) in row.iter().zip(&units).zip(&want) {
                match want.get("value") {
                    Some(value) => assert_eq!((cell, *unit), (value, &want["unit"]), "{name}"),
                    None => assert_eq!((cell, *unit), (want, &json!("1")), "{name}"),
                }
            }
        }
    }
}
