//! Unit factors against an independent library, and the presenter.

use serde::Serialize;

use super::*;

fn printed<T: Serialize>(system: System, value: &T) -> String {
    In(Presentation::Printed(system), value).text().unwrap()
}

/// Every factor that `uom` 0.38 knows, compared with ours. Its pound-force, survey foot
/// and what follows from them stand in its table with 7 digits, the others with all.
#[test]
fn factors_agree_with_uom() {
    use uom::si::f64 as q;
    use uom::si::*;
    macro_rules! same {
        ($tolerance:expr; $($unit:expr => $q:ident, $m:ident::$u:ident;)+) => { $({
            let ours = $unit.def();
            let theirs = q::$q::new::<$m::$u>(1.0).value;
            assert!((ours.factor / theirs - 1.0).abs() <= $tolerance, "{}: {} {theirs}", ours.name, ours.factor);
            assert_eq!(ours.offset, 0.0, "{}", ours.name);
        })+ };
    }
    same! { 4e-16;
        LengthUnit::M => Length, length::meter; LengthUnit::Mm => Length, length::millimeter;
        LengthUnit::Cm => Length, length::centimeter; LengthUnit::Ft => Length, length::foot;
        LengthUnit::In => Length, length::inch;
        ForceUnit::N => Force, force::newton; ForceUnit::KN => Force, force::kilonewton;
        StressUnit::Pa => Pressure, pressure::pascal; StressUnit::KPa => Pressure, pressure::kilopascal;
        StressUnit::MPa => Pressure, pressure::megapascal; StressUnit::Bar => Pressure, pressure::bar;
        AreaUnit::M2 => Area, area::square_meter; AreaUnit::Mm2 => Area, area::square_millimeter;
        VolumeUnit::M3 => Volume, volume::cubic_meter; VolumeUnit::L => Volume, volume::liter;
        VolumeUnit::Cm3 => Volume, volume::cubic_centimeter;
        MassUnit::Kg => Mass, mass::kilogram; MassUnit::T => Mass, mass::megagram;
        DurationUnit::S => Time, time::second; DurationUnit::Min => Time, time::minute;
        DurationUnit::H => Time, time::hour; DurationUnit::Day => Time, time::day;
        VelocityUnit::MPerS => Velocity, velocity::meter_per_second;
        VelocityUnit::MmPerS => Velocity, velocity::millimeter_per_second;
        VelocityUnit::FtPerMin => Velocity, velocity::foot_per_minute;
        VelocityUnit::InPerMin => Velocity, velocity::inch_per_minute;
        DurationUnit::Year => Time, time::year; AngleUnit::Rad => Angle, angle::radian;
    }
    same! { 3e-7;
        LengthUnit::FtUsSurvey => Length, length::foot_survey;
        ForceUnit::Lbf => Force, force::pound_force; ForceUnit::Kip => Force, force::kip;
        StressUnit::Psi => Pressure, pressure::psi; StressUnit::Ksi => Pressure, pressure::kip_per_square_inch;
        AreaUnit::Ft2 => Area, area::square_foot; AreaUnit::In2 => Area, area::square_inch;
        VolumeUnit::Ft3 => Volume, volume::cubic_foot; VolumeUnit::Yd3 => Volume, volume::cubic_yard;
        VolumeUnit::In3 => Volume, volume::cubic_inch; AngleUnit::Deg => Angle, angle::degree;
        MassUnit::Lb => Mass, mass::pound; MassUnit::TonUs => Mass, mass::ton_short;
    }
    // products of them: to the same 7 digits
    let lbf = q::Force::new::<force::pound_force>(1.0);
    let ft = q::Length::new::<length::foot>(1.0);
    let inch = q::Length::new::<length::inch>(1.0);
    for (unit, theirs) in [
        (MomentUnit::FtLbf.def(), (lbf * ft).value),
        (MomentUnit::InLbf.def(), (lbf * inch).value),
        (LineLoadUnit::Plf.def(), (lbf / ft).value),
        (UnitWeightUnit::Pcf.def(), (lbf / (ft * ft * ft)).value),
        (StressUnit::Psf.def(), (lbf / (ft * ft)).value),
        (SpringUnit::LbfPerIn.def(), (lbf / inch).value),
        (
            VelocityUnit::MPerMin.def(),
            (q::Length::new::<length::meter>(1.0) / q::Time::new::<time::minute>(1.0)).value,
        ),
        (RigidityUnit::LbfIn2.def(), (lbf * inch * inch).value),
    ] {
        assert!((unit.factor / theirs - 1.0).abs() < 3e-7, "{}", unit.name);
    }
    for t in [0.0, 100.0] {
        use thermodynamic_temperature::{degree_celsius, degree_fahrenheit};
        let c = q::ThermodynamicTemperature::new::<degree_celsius>(t).value;
        let f = q::ThermodynamicTemperature::new::<degree_fahrenheit>(t).value;
        assert!((Temperature::new(t, TemperatureUnit::DegC).si() - c).abs() < 1e-11);
        assert!((Temperature::new(t, TemperatureUnit::DegF).si() - f).abs() < 1e-11);
    }
}

/// The pound-force and what follows from it, against the digits NIST SP 811 B.8 prints.
#[test]
fn factors_agree_with_the_printed_tables() {
    let near = |unit: &UnitDef, printed: f64| {
        assert!((unit.factor / printed - 1.0).abs() < 5e-7, "{}", unit.name);
    };
    near(ForceUnit::Lbf.def(), 4.448_222);
    near(ForceUnit::Kip.def(), 4.448_222e3);
    near(StressUnit::Psi.def(), 6.894_757e3);
    near(StressUnit::Psf.def(), 4.788_026e1);
    near(MomentUnit::FtLbf.def(), 1.355_818);
    near(LineLoadUnit::Plf.def(), 1.459_390e1);
    near(UnitWeightUnit::Pcf.def(), 1.570_875e2);
    near(ConductivityUnit::BtuPerHFtF.def(), 1.730_735);
    near(HeatUnit::BtuPerFt3.def(), 37_258.95);
    near(ThermalResistanceUnit::HFt2FPerBtu.def(), 0.176_110_2);
    near(SegregationUnit::Mm2PerDayK.def(), 1.157_407e-11);
    near(SegregationUnit::Mm2PerHK.def(), 2.777_778e-10);
    near(InverseStressUnit::PerKsf.def(), 2.088_543e-5);
    near(VelocityUnit::MmPerDay.def(), 1.157_407e-8);
    near(VelocityUnit::InPerDay.def(), 2.939_815e-7);
    near(LossRateUnit::UmPerYear.def(), 3.170_979e-14);
    near(LossRateUnit::MmPerYear.def(), 3.170_979e-11);
    near(LossRateUnit::MilPerYear.def(), 8.054_287e-13);
    near(LossRateUnit::InPerYear.def(), 8.054_287e-10);
    near(TemperatureDifferenceUnit::R.def(), 0.555_555_6);
    near(ResistivityUnit::OhmCm.def(), 0.01);
    near(FlowUnit::GalPerMin.def(), 6.309_020e-5);
    near(LengthUnit::FtUsSurvey.def(), 3.048_006e-1);
    assert_eq!(LBF_EXACT, ForceUnit::Lbf.def().factor);
}

/// 0.45359237 kg x 9.80665 m/s2, both exact.
const LBF_EXACT: f64 = 4.448_221_615_260_5;

#[test]
fn each_role_has_a_base_unit_of_factor_one() {
    for role in ROLES {
        assert_eq!(
            (role.base.factor, role.base.offset),
            (1.0, 0.0),
            "{}",
            role.name
        );
        assert_eq!(role_of(role.mark).unwrap().name, role.name);
    }
}

/// More marks than are kept, and beside each its beginnings, which stand at the same place: those
/// that are eight shorter are kept where it is.
#[test]
fn a_remembered_role_is_that_of_its_mark() {
    let mut out = out::Out::after(Vec::new());
    let name = |role: Option<&Role>| role.map(|role| role.name);
    for _ in 0..2 {
        for role in ROLES {
            let whole = role.mark.len();
            for length in (0..=whole).flat_map(|l| [l, l % 8, whole]) {
                let mark = &role.mark[..length];
                assert_eq!(name(out.role_of(mark)), name(role_of(mark)), "{mark}");
            }
        }
    }
}

#[test]
fn a_quantity_reads_in_any_unit_and_prints_in_its_role() {
    let depth: Length = serde_json::from_str(r#"{"value": 12, "unit": "in"}"#).unwrap();
    assert_eq!(
        printed(System::UsCustomary, &depth),
        r#"{"value":1,"unit":"ft"}"#
    );
    assert_eq!(
        printed(System::Si, &depth),
        r#"{"value":0.3048,"unit":"m"}"#
    );
    let plate = Size::from(depth);
    assert_eq!(
        printed(System::UsCustomary, &plate),
        r#"{"value":12,"unit":"in"}"#
    );
    assert_eq!(
        serde_json::to_string(&depth).unwrap(),
        r#"{"value":0.30479999999999996,"unit":"m"}"#
    );
    let frost = Temperature::new(32.0, TemperatureUnit::DegF);
    assert_eq!(printed(System::Si, &frost), r#"{"value":0,"unit":"degC"}"#);
}

#[test]
fn a_wrong_unit_is_refused_with_a_hint() {
    let text = |json: &str| serde_json::from_str::<Force>(json).unwrap_err().to_string();
    assert!(text(r#"{"value":1,"unit":"lb"}"#).contains("`lbf` or `kip`"));
    assert!(text(r#"{"value":1,"unit":"ft"}"#).contains("unknown unit `ft`"));
    assert!(text(r#"{"value":1,"unit":"kN","note":2}"#).contains("unknown field `note`"));
    assert!(text(r#"{"value":1,"value":2,"unit":"kN"}"#).contains("duplicate field"));
    assert!(serde_json::from_str::<Force>(r#"{"value":1e400,"unit":"kN"}"#).is_err());
}

#[test]
fn a_number_that_is_not_finite_does_not_leave() {
    for bad in [f64::NAN, f64::INFINITY, -f64::INFINITY] {
        let q = Force::from_si(bad);
        assert!(In(Presentation::Printed(System::Si), &q).text().is_err());
        assert!(
            In(Presentation::Printed(System::Si), &vec![bad])
                .text()
                .is_err()
        );
    }
}

#[test]
fn plain_form_keeps_every_bit() {
    let mut x = 0.1234567f64;
    for _ in 0..10_000 {
        x = (x * 997.13).fract() * 1e6 + 1e-9;
        let q = SoilStress::from_si(x);
        let back: SoilStress = serde_json::from_str(&serde_json::to_string(&q).unwrap()).unwrap();
        assert_eq!(back.si().to_bits(), q.si().to_bits());
    }
}

#[test]
fn the_digest_form_leaves_out_tags_only() {
    #[derive(Serialize)]
    struct Thing {
        label: &'static str,
        tags: Vec<u8>,
        depth: Length,
    }
    let thing = Thing {
        label: "a",
        tags: vec![1],
        depth: Length::from_si(2.0),
    };
    assert_eq!(
        In(Presentation::Digest, &thing).text().unwrap(),
        r#"{"label":"a","depth":{"value":2.0,"unit":"m"}}"#
    );
}
