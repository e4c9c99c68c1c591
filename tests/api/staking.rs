//! Setting out over HTTP: stakes that read back to the plan, lists and drawings with their
//! media types. What each sheet holds is judged where it is drawn.

use bearwell_tests::{Door, Reply, openapi, send};
use serde_json::Value;

const DXF: &str = "image/vnd.dxf";
const CSV: &str = "text/csv";
const FT: f64 = 0.3048;

fn request(name: &str) -> Value {
    let path = openapi().join(format!("examples/pile-layout/{name}.json"));
    serde_json::from_slice(&std::fs::read(path).expect("an example")).expect("JSON")
}

async fn ask(door: &Door, name: &str, form: Option<&str>, accept: &str) -> Reply {
    let mut body = request(name);
    if let Some(form) = form {
        body["form"] = form.into();
    }
    let ask = door.json("/v1/pile-layout", body.to_string());
    send(ask.header("accept", accept)).await
}

fn text(reply: Reply) -> String {
    assert_eq!(
        reply.status,
        200,
        "{}",
        String::from_utf8_lossy(&reply.bytes)
    );
    String::from_utf8(reply.bytes.to_vec()).expect("text")
}

/// The plan was turned by 31.5 degrees about its origin at 5120.44 east, 8260.15 north before
/// the control points were rounded to 0.001 ft; every stake must lead back within 1/16 in.
#[tokio::test]
async fn all_stakes_of_a_turned_house_lead_back_to_the_plan() {
    let door = Door::open();
    let answer = ask(&door, "linnet-staking", None, "application/json").await;
    let answer = answer.json();
    let points = answer["result"]["staking"]["points"]
        .as_array()
        .expect("points");
    assert_eq!(points.len(), 24);
    // cosine and sine of 31.5 degrees, by hand
    let (c, s) = (0.852_640_164_4, 0.522_498_564_7);
    for point in points {
        let number = |name: &str| {
            let text = point["site"][name].as_str().expect("a text");
            text.parse::<f64>().expect("a number")
        };
        let (de, dn) = (
            number("easting_text") - 5120.44,
            number("northing_text") - 8260.15,
        );
        for (member, back) in [("x", c * de + s * dn), ("y", c * dn - s * de)] {
            let plan = &point["at"][member];
            assert_eq!(plan["unit"], "ft");
            let off = (back - plan["value"].as_f64().expect("a number")).abs() * FT;
            assert!(
                off < 0.0254 / 16.0,
                "{}: {member} off by {off} m",
                point["label"]
            );
        }
    }
    let diagonal = &answer["result"]["staking"]["frames"][0]["diagonals"][0];
    assert_eq!(diagonal["distance_text"], "44'-4 7/8\"");
    assert_eq!(diagonal["distance"]["value"], 44.407_206_6);
}

#[tokio::test]
async fn lists_and_drawings_come_in_their_media_types() {
    let door = Door::open();
    for (form, accept, start) in [
        (None, CSV, "pile,type,x [ft],"),
        (
            Some("staking"),
            CSV,
            "point,northing [ft],easting [ft],elevation [ft],description\r\n",
        ),
        (Some("tape"), CSV, "kind,beams,from,to,distance [ft],"),
        (None, DXF, "999\nUnits: ft.\n999\nPlan coordinates"),
        (Some("site_dxf"), DXF, "999\nUnits: ft.\n999\nSite grid"),
    ] {
        let reply = ask(&door, "linnet-staking", form, accept).await;
        assert_eq!(reply.header("content-type"), Some(accept));
        assert!(reply.header("content-digest").is_some());
        let text = text(reply);
        assert!(text.starts_with(start), "{}", &text[..80]);
    }
    // a form of another media type is none of this one
    let reply = ask(&door, "linnet-staking", Some("staking"), DXF).await;
    assert_eq!(reply.status, 422);
    assert_eq!(reply.json()["errors"][0]["code"], "unknown_form");
    let reply = ask(&door, "linnet-staking", None, "application/pdf").await;
    assert_eq!(reply.status, 406);
    let detail = reply.json()["detail"].to_string();
    assert!(
        detail.contains("text/csv") && detail.contains(DXF),
        "{detail}"
    );
}
