//! Properties over random layered grounds: what never makes frost shallower, units, splitting,
//! continuity, insulation there and back.

use super::*;
use crate::random::Random;

/// A layer by its properties: W/m K frozen and unfrozen, MJ/m3 K, MJ/m3; m thick but for the
/// last.
#[derive(Clone, Copy)]
struct Kind {
    thickness: Option<f64>,
    k: (f64, f64),
    capacity: f64,
    latent: f64,
}

impl Kind {
    fn json(&self) -> Json {
        given(self.thickness, self.k, self.capacity, self.latent)
    }
}

/// Ground of one to four layers, some under a slab without water or what resists like a board;
/// ground that is not too warm for frost to come through.
#[derive(Clone)]
struct Drawn {
    index: f64,
    mean: f64,
    days: f64,
    layers: Vec<Kind>,
}

impl Drawn {
    fn of(random: &mut Random) -> Self {
        let count = 1 + random.below(4);
        let mut layers = Vec::new();
        let dry = |thickness: f64, k: f64, capacity: f64| Kind {
            thickness: Some(thickness),
            k: (k, k),
            capacity,
            latent: 0.0,
        };
        match random.below(4) {
            0 => layers.push(dry(random.between(0.01, 0.06), 0.035, 0.04)),
            1 => layers.push(dry(random.between(0.1, 0.25), 1.7, 1.9)),
            _ => {}
        }
        for i in 0..count {
            let frozen = random.between(0.8, 2.8);
            layers.push(Kind {
                thickness: (i + 1 < count).then(|| random.between(0.1, 0.8)),
                k: (frozen, frozen * random.between(0.65, 1.05)),
                capacity: random.between(1.4, 2.9),
                latent: random.between(15.0, 180.0),
            });
        }
        Self {
            index: random.between(500.0, 1800.0),
            mean: random.between(1.0, 6.0),
            days: random.between(100.0, 200.0),
            layers,
        }
    }

    fn request(&self) -> Json {
        let layers = self.layers.iter().map(Kind::json).collect();
        let mut request = request(winter(self.index, self.mean, self.days), layers);
        request["method"] = json!("heat_conduction");
        request
    }

    fn frost(&self) -> ComputedFrost {
        frost(&self.request())
    }

    /// The same with one thing changed.
    fn with(&self, change: impl FnOnce(&mut Self)) -> Self {
        let mut other = self.clone();
        change(&mut other);
        other
    }
}

/// Not shallower by any of the methods that hold in both.
#[track_caller]
fn not_shallower(more: &ComputedFrost, less: &ComputedFrost, methods: &[FrostDepthMethod]) {
    for method in methods {
        if let (Some(more), Some(less)) = (by(more, *method), by(less, *method)) {
            assert!(more >= less * (1.0 - 1e-9), "{method:?}: {more} {less}");
        }
    }
}

#[test]
fn a_harder_winter_never_makes_frost_shallower() {
    let mut random = Random(31);
    for _ in 0..16 {
        let drawn = Drawn::of(&mut random);
        let less = drawn.frost();
        let by = [1.0001, 1.2][random.below(2)];
        let more = drawn.with(|d| d.index *= by).frost();
        not_shallower(&more, &less, &FrostDepthMethod::ALL);
        // less warmth in the ground neither
        let colder = drawn.with(|d| d.mean *= 0.9).frost();
        not_shallower(&colder, &less, &FrostDepthMethod::ALL);
    }
}

/// All conductivities together: the same as a longer season of the same cold.
#[test]
fn more_conductivity_never_makes_frost_shallower() {
    let mut random = Random(32);
    for _ in 0..16 {
        let drawn = Drawn::of(&mut random);
        let by = random.between(1.0001, 1.2);
        let more = drawn.with(|d| {
            for layer in &mut d.layers {
                layer.k = (layer.k.0 * by, layer.k.1 * by);
            }
        });
        not_shallower(&more.frost(), &drawn.frost(), &FrostDepthMethod::ALL);
    }
}

/// One layer alone has no such rule: ground below the frost that conducts better brings up more
/// heat. The layered form of Berggren and Stefan's equation do not see that.
#[test]
fn conductivity_of_the_layer_below_can_make_frost_shallower() {
    let ground = |k: f64| {
        let layers = vec![
            given(Some(1.0), (1.2, 1.2), 2.0, 60.0),
            given(None, (k, k), 2.4, 150.0),
        ];
        frost(&request(winter(520.0, 6.0, 150.0), layers))
    };
    let (less, more) = (ground(1.0), ground(2.5));
    assert!((0.9..1.0).contains(&less.depth.si()), "{:?}", less.depth);
    assert!(more.depth.si() < less.depth.si() * 0.98);
    let berggren = FrostDepthMethod::ModifiedBerggren;
    assert_eq!(by(&more, berggren), by(&less, berggren));
}

/// Less water at the same conductivity: less latent heat and heat capacity of any layer.
#[test]
fn dryness_at_the_same_conductivity_never_makes_frost_shallower() {
    let mut random = Random(33);
    let methods = [FrostDepthMethod::HeatConduction, FrostDepthMethod::Stefan];
    for _ in 0..20 {
        let drawn = Drawn::of(&mut random);
        let i = random.below(drawn.layers.len());
        let by = random.between(0.5, 0.99);
        let drier = drawn.with(|d| {
            // of 334 kJ/kg of water and of 4.187 kJ/kg K, three quarters of it in the mean
            let water = d.layers[i].latent * (1.0 - by) / 334.0;
            d.layers[i].latent *= by;
            d.layers[i].capacity -= 0.75 * 4.187 * water;
        });
        let of_one_kind = drawn.layers.len() == 1;
        let (more, less) = (drier.frost(), drawn.frost());
        not_shallower(&more, &less, &methods);
        if of_one_kind {
            not_shallower(&more, &less, &FrostDepthMethod::ALL);
        }
    }
}

/// What the layered form of Berggren breaks: where the ground is warm, less water in a layer of
/// high conductivity on top makes the ratio mu of the whole larger and the frost shallower.
#[test]
fn the_layered_form_breaks_the_rule_of_dryness() {
    let ground = |latent: f64| {
        let layers = vec![
            given(Some(0.6), (6.0, 6.0), 2.0, latent),
            given(None, (0.8, 0.8), 2.2, 90.0),
        ];
        frost(&request(winter(420.0, 10.0, 150.0), layers))
    };
    let (wet, dry) = (ground(90.0), ground(40.0));
    let berggren = |f: &ComputedFrost| by(f, FrostDepthMethod::ModifiedBerggren).unwrap();
    assert!(berggren(&dry) < berggren(&wet));
    assert!(dry.depth > wet.depth);
}

/// With Kersten's conductivities, which fall with the water too, the rule holds mostly; it can
/// break where the ground is warm, by less than 0.3 % for a hundredth less water.
#[test]
fn dryness_with_the_conductivity_of_the_correlation() {
    let mut random = Random(34);
    let (mut held, mut broken) = (0, 0);
    for _ in 0..400 {
        let fine = random.below(2) == 0;
        let (texture, least) = if fine {
            ("fine", 0.07)
        } else {
            ("coarse", 0.01)
        };
        let pcf = random.between(
            if fine { 75.0 } else { 95.0 },
            if fine { 118.0 } else { 135.0 },
        );
        let full = 62.4 / pcf - 1.0 / 2.7;
        let water = random.between(least * 1.02, full);
        let soil = |water: f64| {
            let soil = json!({ "texture": texture, "dry_unit_weight": q(pcf, "pcf"),
                "water_content_ratio": water });
            json!([{ "material": { "soil": soil } }])
        };
        let w = winter(
            random.between(200.0, 2500.0),
            random.between(0.5, 15.0),
            130.0,
        );
        let of = |water: f64| {
            let request = json!({ "winter": w, "layers": soil(water) });
            let call: Request = serde_json::from_value(request).unwrap();
            super::berggren_only(&call)
        };
        if let (Some((wet, _)), Some((dry, alpha))) = (of(water), of(water * 0.99)) {
            if dry >= wet {
                held += 1;
            } else {
                broken += 1;
                assert!(alpha > 0.5 && dry > wet * 0.997, "{dry} {wet} {alpha}");
            }
        }
    }
    assert!(held > 200 && broken * 10 < held, "{held} {broken}");
}

#[test]
fn units_change_nothing() {
    let mut random = Random(35);
    for _ in 0..8 {
        let drawn = Drawn::of(&mut random);
        let si = drawn.request();
        let mut us = si.clone();
        let turn = |at: &mut Json, factor: f64, offset: f64, unit: &str| {
            let value = at["value"].as_f64().unwrap();
            *at = q((value - offset) / factor, unit);
        };
        let index = &mut us["winter"]["freezing_index"]["given"]["value"];
        turn(index, 5.0 / 9.0, 0.0, "F_day");
        let mean = &mut us["winter"]["mean_annual_temperature"];
        turn(mean, 5.0 / 9.0, -160.0 / 9.0, "degF");
        for layer in us["layers"].as_array_mut().unwrap() {
            if layer["thickness"].is_object() {
                turn(&mut layer["thickness"], 0.3048, 0.0, "ft");
            } else {
                layer.as_object_mut().unwrap().remove("thickness");
            }
            let ground = &mut layer["material"]["given"];
            for k in ["frozen_conductivity", "unfrozen_conductivity"] {
                turn(&mut ground[k], 1.730_734_666, 0.0, "Btu_per_h_ft_F");
            }
            turn(
                &mut ground["heat_capacity"],
                0.067_066_11,
                0.0,
                "Btu_per_ft3_F",
            );
            turn(
                &mut ground["latent_heat"],
                0.037_258_946,
                0.0,
                "Btu_per_ft3",
            );
        }
        let (si, us) = (frost(&si), frost(&us));
        for method in FrostDepthMethod::ALL {
            match (by(&si, method), by(&us, method)) {
                (Some(a), Some(b)) => near(a, b, 1e-7),
                (a, b) => assert_eq!(a, b),
            }
        }
    }
}

#[test]
fn splitting_a_layer_changes_nothing() {
    let mut random = Random(36);
    for _ in 0..14 {
        let drawn = Drawn::of(&mut random);
        let i = random.below(drawn.layers.len());
        let part = random.between(0.01, 0.99);
        let split = drawn.with(|d| {
            let mut upper = d.layers[i];
            let whole = upper.thickness.unwrap_or(1.0);
            upper.thickness = Some(whole * part);
            d.layers[i].thickness = d.layers[i].thickness.map(|t| t - whole * part);
            d.layers.insert(i, upper);
        });
        let (one, two) = (drawn.frost(), split.frost());
        for method in FrostDepthMethod::ALL {
            match (by(&one, method), by(&two, method)) {
                (Some(a), Some(b)) => near(a, b, 1e-9),
                (a, b) => assert_eq!(a, b),
            }
        }
        // the default too: of one kind it stays the closed form
        let mut request = split.request();
        request.as_object_mut().unwrap().remove("method");
        let chosen = frost(&request).method;
        let of_one_kind = drawn.layers.len() == 1;
        assert_eq!(chosen == FrostDepthMethod::ModifiedBerggren, of_one_kind);
    }
}

/// As the winter grows harder the frost goes through the boundary of two layers without a jump.
#[test]
fn frost_goes_through_a_boundary_without_a_jump() {
    let ground = |index: f64| {
        let layers = vec![
            given(Some(0.3), (1.7, 1.5), 2.0, 50.0),
            given(Some(0.4), (1.2, 1.0), 2.3, 130.0),
            given(None, (2.2, 2.0), 1.9, 40.0),
        ];
        let mut request = request(winter(index, 3.0, 140.0), layers);
        request["method"] = json!("heat_conduction");
        frost(&request)
    };
    for boundary in [0.3, 0.7] {
        for method in FrostDepthMethod::ALL {
            let (mut low, mut high) = (60.0, 900.0);
            while high - low > 0.02 {
                let middle = 0.5 * (low + high);
                if by(&ground(middle), method).unwrap() < boundary {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            let jump = by(&ground(high), method).unwrap() - by(&ground(low), method).unwrap();
            assert!((0.0..1e-4).contains(&jump), "{method:?} {boundary}: {jump}");
        }
    }
}

/// A board as thick as the answer says brings the depth to where it was wanted, by the same
/// method.
#[test]
fn insulation_goes_there_and_back() {
    let mut random = Random(37);
    let mut thick = 0;
    for round in 0..16 {
        let mut drawn = Drawn::of(&mut random);
        drawn.layers.retain(|layer| layer.latent > 0.0);
        let mut request = drawn.request();
        let on_top = drawn.layers.len() > 1 && round % 2 == 0;
        let top = if on_top {
            drawn.layers[0].thickness.unwrap()
        } else {
            0.0
        };
        let without = drawn.frost().depth.si();
        let wanted = random.between(top + 0.05, without.max(top + 0.1));
        if wanted > 5.0 {
            continue;
        }
        request["insulation_for"] = json!({
            "depth": q(wanted, "m"), "conductivity": q(0.034, "W_per_m_K"),
        });
        if on_top {
            request["layers"][1]["label"] = json!("under the board");
            request["insulation_for"]["on_top_of"] = json!("under the board");
        }
        let found = frost(&request).insulation.unwrap();
        near(found.depth_without.si(), without, 1e-12);
        let thickness = found.thickness.si();
        if wanted >= without {
            assert_eq!(thickness, 0.0);
            continue;
        }
        near(found.resistance.si(), thickness / 0.034, 1e-12);
        if thickness < 0.001 {
            continue;
        }
        thick += 1;
        let at = usize::from(on_top);
        let layers = request["layers"].as_array_mut().unwrap();
        layers.insert(at, board(thickness, 0.034));
        request.as_object_mut().unwrap().remove("insulation_for");
        near(depth(&request) - thickness, wanted, 1e-6);
    }
    assert!(thick >= 8, "{thick}");
}
