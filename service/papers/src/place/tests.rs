//! Labels, leaders and lines keep off each other.

use super::*;

const FIELD: Rect = Rect {
    x: 10.0,
    y: 10.0,
    w: 100.0,
    h: 60.0,
};

#[test]
fn a_line_crosses_what_it_runs_through() {
    let r = Rect {
        x: 0.0,
        y: 0.0,
        w: 10.0,
        h: 5.0,
    };
    assert!(crosses(&r, (-5.0, 2.0), (15.0, 2.0)));
    assert!(crosses(&r, (2.0, 2.0), (3.0, 3.0)));
    assert!(!crosses(&r, (-5.0, 6.0), (15.0, 6.0)));
    assert!(!crosses(&r, (-5.0, 0.0), (5.0, 12.0)));
    assert!(crosses(&r, (-5.0, -5.0), (12.0, 12.0)));
}

#[test]
fn labels_never_cover_each_other_and_stay_inside() {
    let mut room = Room::new(FIELD);
    let mut placed: Vec<Rect> = Vec::new();
    let mut left_out = 0;
    for i in 0..60 {
        let at = (
            12.0 + f64::from(i % 10) * 9.5,
            15.0 + f64::from(i / 10) * 9.0,
        );
        match room.label(at, 1.0, (8.0, 3.0), (0.0, -1.0), true) {
            Some(p) => {
                assert!(FIELD.holds(&p.rect));
                assert!(placed.iter().all(|q| !q.overlaps(&p.rect)));
                placed.push(p.rect);
            }
            None => left_out += 1,
        }
    }
    assert!(placed.len() > 50, "{left_out} left out");
}

#[test]
fn a_label_keeps_off_a_line_where_it_can() {
    let mut room = Room::new(FIELD);
    room.avoid((10.0, 40.0), (110.0, 40.0));
    let p = room.label((60.0, 40.0), 2.0, (12.0, 8.0), (0.0, 1.0), true);
    assert_eq!(p.map(|p| (p.covers, p.leader)), Some((0, None)));
    assert!(p.is_some_and(|p| p.rect.y > 40.0));
}

#[test]
fn a_leader_runs_over_nothing() {
    let mut room = Room::new(FIELD);
    // all that is near is taken, but for a lane towards the right
    for (x, y, w, h) in [(40.0, 20.0, 30.0, 19.5), (40.0, 40.5, 30.0, 19.5)] {
        room.take(Rect { x, y, w, h });
    }
    room.take(Rect {
        x: 40.0,
        y: 39.0,
        w: 19.0,
        h: 2.0,
    });
    let p = room.label((60.0, 40.0), 0.4, (12.0, 8.0), (0.0, 1.0), true);
    let (from, to) = p.and_then(|p| p.leader).expect("a leader");
    assert!(from.1 == 40.0 && to.1 == 40.0 && to.0 > from.0);
    // the lane is taken now
    assert_eq!(
        room.label((61.0, 40.0), 0.4, (12.0, 8.0), (0.0, 1.0), true),
        None
    );
}

/// A mark may lie under the start of its leader, a text may not, however little of it is in
/// the way.
#[test]
fn a_leader_does_not_start_in_a_text() {
    let foot = (60.0, 40.0);
    let over = Rect {
        x: 50.0,
        y: 36.0,
        w: 20.0,
        h: 4.5,
    };
    let found = |room: &mut Room| room.label_at(foot, 0.3, (9.0, 3.0), (0.0, 1.0), &[1e6, 4.0]);
    let mut room = Room::new(FIELD);
    room.take(over);
    let leader = found(&mut room).and_then(|p| p.leader).expect("a leader");
    assert!(leader.0.1 < over.bottom() && leader.1.1 > over.bottom());
    let mut room = Room::new(FIELD);
    room.take_text(over);
    assert_eq!(found(&mut room), None);
}

#[test]
fn nothing_covers_the_ends_of_a_leader() {
    let mut room = Room::new(FIELD);
    room.keep(&Placed {
        rect: Rect {
            x: 55.0,
            y: 52.0,
            w: 10.0,
            h: 4.0,
        },
        leader: Some(((60.0, 40.0), (60.0, 52.0))),
        covers: 0,
    });
    let text = |y: f64| Rect {
        x: 56.0,
        y,
        w: 8.0,
        h: 3.0,
    };
    assert!(room.free(&text(37.0)));
    for y in [37.2, 37.7, 40.0, 46.0, 49.0] {
        assert!(!room.free(&text(y)), "{y}");
    }
}

#[test]
fn a_line_goes_round_what_is_taken() {
    let mut room = Room::new(FIELD);
    for x in [30.0, 35.0, 80.0] {
        room.take(Rect {
            x,
            y: 30.0,
            w: 10.0,
            h: 10.0,
        });
    }
    let parts = room.around(((10.0, 35.0), (110.0, 35.0)), 1.0);
    let ends: Vec<(f64, f64)> = parts.iter().map(|(a, b)| (a.0, b.0)).collect();
    let wanted = [(10.0, 29.0), (46.0, 79.0), (91.0, 110.0)];
    assert_eq!(ends.len(), wanted.len());
    for (e, w) in ends.iter().zip(wanted) {
        assert!(
            (e.0 - w.0).abs() < 1e-9 && (e.1 - w.1).abs() < 1e-9,
            "{e:?}"
        );
    }
    let clear = ((10.0, 60.0), (110.0, 60.0));
    assert_eq!(room.around(clear, 1.0), vec![clear]);
    assert!(room.around(((32.0, 35.0), (38.0, 36.0)), 0.0).is_empty());
}

#[test]
fn no_room_is_told() {
    let mut room = Room::new(FIELD);
    room.take(FIELD);
    assert_eq!(
        room.label((60.0, 40.0), 2.0, (12.0, 8.0), (0.0, 1.0), true),
        None
    );
}
