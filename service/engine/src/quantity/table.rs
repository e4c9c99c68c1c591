//! Every unit and every quantity, one line each. Factors are exact by definition
//! unless the line says otherwise; a test compares them with the `uom` crate.
//!
//! Origins: "SI" = SI Brochure, 9th ed. (2019); "SP 811" = NIST Special Publication
//! 811 (2008), Appendix B; "derived" = product or quotient of lines given here.

use super::macros::{Quantity, Role, UnitDef, UnitSet, quantities, units};
use super::shown::{RATIO, Shown};
use crate::math::PI;

/// One pound-force, N: 0.45359237 kg x 9.80665 m/s2, both exact (SP 811 B.8).
const LBF: f64 = 4.448_221_615_260_5;
/// One foot, m: exact (SP 811 B.8).
const FT: f64 = 0.3048;
/// One inch, m: exact (SP 811 B.8).
const IN: f64 = 0.0254;
/// One British thermal unit (IT), J: exact (SP 811 B.8).
const BTU: f64 = 1_055.055_852_62;

units! {
    /// Units of length.
    LengthUnit base M {
        M "m" = 1.0; "SI base unit"
        Mm "mm" = 1e-3; "SI"
        Cm "cm" = 1e-2; "SI"
        Um "um" = 1e-6; "SI"
        Ft "ft" = FT; "SP 811 B.8, international foot, exact"
        In "in" = IN; "SP 811 B.8, exact"
        Mil "mil" = 1e-3 * IN; "SP 811 B.8, exact"
        FtUsSurvey "ft_us_survey" = 1200.0 / 3937.0; "SP 811 B.6, US survey foot, exact"
    }
    hint { "feet" => "write `ft`" "foot" => "write `ft`" "inch" => "write `in`" "inches" => "write `in`" "\"" => "write `in`" "'" => "write `ft`" "ft_us" => "write `ft_us_survey`" }

    /// Units of force.
    ForceUnit base N {
        N "N" = 1.0; "SI"
        KN "kN" = 1e3; "SI"
        Lbf "lbf" = LBF; "SP 811 B.8, exact"
        Kip "kip" = 1e3 * LBF; "SP 811 B.8, 1000 lbf, exact"
    }
    hint { "lb" => "a pound is a mass here; for a force write `lbf` or `kip`" "lbs" => "a pound is a mass here; for a force write `lbf` or `kip`" "kg" => "a kilogram is a mass; for a force write `N` or `kN`" "k" => "write `kip`" "kips" => "write `kip`" "KN" => "write `kN`" "kn" => "write `kN`" }

    /// Units of pressure and stress.
    StressUnit base Pa {
        Pa "Pa" = 1.0; "SI"
        KPa "kPa" = 1e3; "SI"
        MPa "MPa" = 1e6; "SI"
        Bar "bar" = 1e5; "SP 811 table 8, exact"
        Psf "psf" = LBF / (FT * FT); "derived, lbf/ft2"
        Ksf "ksf" = 1e3 * LBF / (FT * FT); "derived, kip/ft2"
        Psi "psi" = LBF / (IN * IN); "derived, lbf/in2"
        Ksi "ksi" = 1e3 * LBF / (IN * IN); "derived, kip/in2"
    }
    hint { "lb" => "write `psf` or `psi`" "lb/ft2" => "write `psf`" "lb/in2" => "write `psi`" "kN/m2" => "write `kPa`" "N/mm2" => "write `MPa`" "kpa" => "write `kPa`" "mpa" => "write `MPa`" "tsf" => "write `ksf`; 1 US ton per square foot is 2 ksf" }

    /// Units of moment and torque.
    MomentUnit base NM {
        NM "N_m" = 1.0; "SI"
        KNM "kN_m" = 1e3; "SI"
        InLbf "in_lbf" = LBF * IN; "derived, lbf x in"
        FtLbf "ft_lbf" = LBF * FT; "derived, lbf x ft"
        KipFt "kip_ft" = 1e3 * LBF * FT; "derived, kip x ft"
        KipIn "kip_in" = 1e3 * LBF * IN; "derived, kip x in"
    }
    hint { "ft-lb" => "write `ft_lbf`" "ft_lb" => "write `ft_lbf`" "lb-ft" => "write `ft_lbf`" "lb_ft" => "write `ft_lbf`" "lbf_ft" => "write `ft_lbf`" "in_lb" => "write `in_lbf`" "Nm" => "write `N_m`" "kNm" => "write `kN_m`" "kN-m" => "write `kN_m`" "ft_kip" => "write `kip_ft`" }

    /// Units of force per length.
    LineLoadUnit base NPerM {
        NPerM "N_per_m" = 1.0; "SI"
        KNPerM "kN_per_m" = 1e3; "SI"
        Plf "plf" = LBF / FT; "derived, lbf/ft"
        Klf "klf" = 1e3 * LBF / FT; "derived, kip/ft"
    }
    hint { "lb/ft" => "write `plf`" "lbf_per_ft" => "write `plf`" "lbf/ft" => "write `plf`" "kip_per_ft" => "write `klf`" "kN/m" => "write `kN_per_m`" "lb" => "write `plf`" }

    /// Units of unit weight.
    UnitWeightUnit base NPerM3 {
        NPerM3 "N_per_m3" = 1.0; "SI"
        KNPerM3 "kN_per_m3" = 1e3; "SI"
        Pcf "pcf" = LBF / (FT * FT * FT); "derived, lbf/ft3"
    }
    hint { "kN/m3" => "write `kN_per_m3`" "lb/ft3" => "write `pcf`" "kg_per_m3" => "a density is not a unit weight: write `kN_per_m3`" }

    /// Units of plane angle.
    AngleUnit base Rad {
        Rad "rad" = 1.0; "SI"
        Deg "deg" = PI / 180.0; "SI Brochure table 8, pi/180"
    }
    hint { "degrees" => "write `deg`" "degree" => "write `deg`" }

    /// Units of torque factor (capacity per torque).
    PerLengthUnit base PerM {
        PerM "per_m" = 1.0; "SI"
        PerFt "per_ft" = 1.0 / FT; "derived, 1/ft"
    }
    hint { "1/m" => "write `per_m`" "1/ft" => "write `per_ft`" "ft-1" => "write `per_ft`" "m-1" => "write `per_m`" }

    /// Units of area.
    AreaUnit base M2 {
        M2 "m2" = 1.0; "SI"
        Mm2 "mm2" = 1e-6; "SI"
        Ft2 "ft2" = FT * FT; "derived"
        In2 "in2" = IN * IN; "derived"
    }
    hint { "sf" => "write `ft2`" "sq_ft" => "write `ft2`" "sq_in" => "write `in2`" }

    /// Units of volume.
    VolumeUnit base M3 {
        M3 "m3" = 1.0; "SI"
        L "L" = 1e-3; "SP 811 table 6, exact"
        Cm3 "cm3" = 1e-6; "SI"
        Ft3 "ft3" = FT * FT * FT; "derived"
        Yd3 "yd3" = 27.0 * FT * FT * FT; "derived"
        In3 "in3" = IN * IN * IN; "derived"
    }
    hint { "cy" => "write `yd3`" "yd" => "write `yd3`" "cc" => "write `cm3`" }

    /// Units of volume displaced in one turn.
    DisplacementUnit base M3PerRev {
        M3PerRev "m3_per_rev" = 1.0; "SI, one turn counted"
        Cm3PerRev "cm3_per_rev" = 1e-6; "SI"
        In3PerRev "in3_per_rev" = IN * IN * IN; "derived"
    }
    hint { "cc_per_rev" => "write `cm3_per_rev`" "in3/rev" => "write `in3_per_rev`" "cir" => "write `in3_per_rev`" }

    /// Units of volume flow.
    FlowUnit base M3PerS {
        M3PerS "m3_per_s" = 1.0; "SI"
        LPerMin "L_per_min" = 1e-3 / 60.0; "derived"
        GalPerMin "gal_per_min" = 231.0 * IN * IN * IN / 60.0; "SP 811 B.8, US gallon of 231 in3, exact"
    }
    hint { "gpm" => "write `gal_per_min`" "lpm" => "write `L_per_min`" }

    /// Units of speed of rotation.
    RotationUnit base RevPerS {
        RevPerS "rev_per_s" = 1.0; "SI, turns counted"
        Rpm "rpm" = 1.0 / 60.0; "SP 811 B.8"
    }
    hint { "rev_per_min" => "write `rpm`" }

    /// Units of speed.
    VelocityUnit base MPerS {
        MPerS "m_per_s" = 1.0; "SI"
        MPerMin "m_per_min" = 1.0 / 60.0; "derived"
        MmPerS "mm_per_s" = 1e-3; "SI"
        FtPerMin "ft_per_min" = FT / 60.0; "derived"
        InPerMin "in_per_min" = IN / 60.0; "derived"
        MmPerDay "mm_per_day" = 1e-3 / 86_400.0; "derived"
        InPerDay "in_per_day" = IN / 86_400.0; "derived"
    }
    hint { "mm/day" => "write `mm_per_day`" "m/min" => "write `m_per_min`" "ft/min" => "write `ft_per_min`" "fpm" => "write `ft_per_min`" }

    /// Units of mass.
    MassUnit base Kg {
        Kg "kg" = 1.0; "SI base unit"
        T "t" = 1e3; "SP 811 table 6, metric ton, exact"
        Lb "lb" = 0.453_592_37; "SP 811 B.8, avoirdupois pound, exact"
        TonUs "ton_us" = 907.184_74; "SP 811 B.8, 2000 lb, exact"
    }
    hint { "lbm" => "write `lb`" "lbf" => "a pound-force is a force; for a mass write `lb`" "ton" => "write `t` or `ton_us`" }

    /// Units of time span.
    DurationUnit base S {
        S "s" = 1.0; "SI base unit"
        Min "min" = 60.0; "SP 811 table 6, exact"
        H "h" = 3600.0; "SP 811 table 6, exact"
        Day "day" = 86_400.0; "SP 811 table 6, exact"
        Year "year" = 31_536_000.0; "SP 811 B.8, year of 365 days, exact"
    }
    hint { "d" => "write `day`" "days" => "write `day`" "hr" => "write `h`" "years" => "write `year`" }

    /// Units of temperature (a point on the scale, not a difference).
    TemperatureUnit base K {
        K "K" = 1.0; "SI base unit"
        DegC "degC" = 1.0, offset 273.15; "SI Brochure 2.3.1, exact"
        DegF "degF" = 5.0 / 9.0, offset 459.67 * 5.0 / 9.0; "SP 811 B.8, exact"
    }
    hint { "C" => "write `degC`" "F" => "write `degF`" }

    /// Units of freezing index (degree-days below freezing).
    FreezingIndexUnit base KS {
        KS "K_s" = 1.0; "SI"
        CDay "C_day" = 86_400.0; "derived"
        FDay "F_day" = 86_400.0 * 5.0 / 9.0; "derived"
    }
    hint { "degC_day" => "write `C_day`" "degF_day" => "write `F_day`" }

    /// Units of thermal conductivity.
    ConductivityUnit base WPerMK {
        WPerMK "W_per_m_K" = 1.0; "SI"
        BtuPerHFtF "Btu_per_h_ft_F" = BTU * 1.8 / (3600.0 * FT); "derived"
    }
    hint { "W/mK" => "write `W_per_m_K`" "W_per_mK" => "write `W_per_m_K`" }

    /// Units of heat capacity of a volume.
    HeatCapacityUnit base JPerM3K {
        JPerM3K "J_per_m3_K" = 1.0; "SI"
        MJPerM3K "MJ_per_m3_K" = 1e6; "SI"
        BtuPerFt3F "Btu_per_ft3_F" = BTU * 1.8 / (FT * FT * FT); "derived"
    }
    hint { }

    /// Units of heat of a volume.
    HeatUnit base JPerM3 {
        JPerM3 "J_per_m3" = 1.0; "SI"
        MJPerM3 "MJ_per_m3" = 1e6; "SI"
        BtuPerFt3 "Btu_per_ft3" = BTU / (FT * FT * FT); "derived"
    }
    hint { }

    /// Units of difference of temperature (not a point on the scale).
    TemperatureDifferenceUnit base K {
        K "K" = 1.0; "SI base unit"
        R "R" = 5.0 / 9.0; "SP 811 B.8, degree Rankine, the step of a degree Fahrenheit, exact"
    }
    hint { "degC" => "a difference of temperature is in `K`" "degF" => "a difference of temperature is in `R`, the step of a degree Fahrenheit" "C" => "write `K`" "F" => "write `R`" }

    /// Units of thermal resistance of a layer.
    ThermalResistanceUnit base M2KPerW {
        M2KPerW "m2_K_per_W" = 1.0; "SI"
        HFt2FPerBtu "h_ft2_F_per_Btu" = 3600.0 * FT * FT / (BTU * 1.8); "derived"
    }
    hint { "R" => "write `h_ft2_F_per_Btu`" "RSI" => "write `m2_K_per_W`" }

    /// Units of segregation potential (water drawn per temperature gradient).
    SegregationUnit base M2PerSK {
        M2PerSK "m2_per_s_K" = 1.0; "SI"
        Mm2PerHK "mm2_per_h_K" = 1e-6 / 3600.0; "derived"
        Mm2PerDayK "mm2_per_day_K" = 1e-6 / 86_400.0; "derived"
    }
    hint { "m2/sC" => "write `m2_per_s_K`" "mm2/Kh" => "write `mm2_per_h_K`" "mm2/Kday" => "write `mm2_per_day_K`" }

    /// Units of sensitivity to stress (one over a stress).
    InverseStressUnit base PerPa {
        PerPa "per_Pa" = 1.0; "SI"
        PerKPa "per_kPa" = 1e-3; "SI"
        PerMPa "per_MPa" = 1e-6; "SI"
        PerKsf "per_ksf" = FT * FT / (1e3 * LBF); "derived, ft2/kip"
    }
    hint { "1/MPa" => "write `per_MPa`" "1/kPa" => "write `per_kPa`" "1/ksf" => "write `per_ksf`" }

    /// Units of loss of thickness over time.
    LossRateUnit base MPerS {
        MPerS "m_per_s" = 1.0; "SI"
        UmPerYear "um_per_year" = 1e-6 / 31_536_000.0; "derived, year of 365 days"
        MmPerYear "mm_per_year" = 1e-3 / 31_536_000.0; "derived, year of 365 days"
        MilPerYear "mil_per_year" = 1e-3 * IN / 31_536_000.0; "derived, year of 365 days"
        InPerYear "in_per_year" = IN / 31_536_000.0; "derived, year of 365 days"
    }
    hint { "um/yr" => "write `um_per_year`" "mpy" => "write `mil_per_year`" }

    /// Units of electrical resistivity of the ground.
    ResistivityUnit base OhmM {
        OhmM "ohm_m" = 1.0; "SI"
        OhmCm "ohm_cm" = 1e-2; "SI"
    }
    hint { "ohm-cm" => "write `ohm_cm`" "ohm-m" => "write `ohm_m`" }

    /// Units of content by mass.
    ContentUnit base KgPerKg {
        KgPerKg "kg_per_kg" = 1.0; "SI, a ratio of masses"
        MgPerKg "mg_per_kg" = 1e-6; "SI"
        Ppm "ppm" = 1e-6; "SP 811 7.10.3, by mass"
        Percent "percent" = 1e-2; "SP 811 7.10.2, by mass"
    }
    hint { "%" => "write `percent`" "mg/kg" => "write `mg_per_kg`" }

    /// Units of subgrade modulus (stress per movement).
    SubgradeUnit base NPerM3 {
        NPerM3 "N_per_m3" = 1.0; "SI"
        KNPerM3 "kN_per_m3" = 1e3; "SI"
        MNPerM3 "MN_per_m3" = 1e6; "SI"
        Pci "pci" = LBF / (IN * IN * IN); "derived, lbf/in3"
    }
    hint { }

    /// Units of stiffness of a support.
    SpringUnit base NPerM {
        NPerM "N_per_m" = 1.0; "SI"
        KNPerM "kN_per_m" = 1e3; "SI"
        KNPerMm "kN_per_mm" = 1e6; "SI"
        LbfPerIn "lbf_per_in" = LBF / IN; "derived"
        KipPerIn "kip_per_in" = 1e3 * LBF / IN; "derived"
        KipPerFt "kip_per_ft" = 1e3 * LBF / FT; "derived"
    }
    hint { "kN/m" => "write `kN_per_m`" "kip/in" => "write `kip_per_in`" "kip/ft" => "write `kip_per_ft`" }

    /// Units of stiffness against rotation.
    RotationalSpringUnit base NMPerRad {
        NMPerRad "N_m_per_rad" = 1.0; "SI"
        KNMPerRad "kN_m_per_rad" = 1e3; "SI"
        KipFtPerRad "kip_ft_per_rad" = 1e3 * LBF * FT; "derived"
    }
    hint { }

    /// Units of flexural rigidity (E x I) and torsional rigidity (G x J).
    RigidityUnit base NM2 {
        NM2 "N_m2" = 1.0; "SI"
        KNM2 "kN_m2" = 1e3; "SI"
        LbfIn2 "lbf_in2" = LBF * IN * IN; "derived"
        KipIn2 "kip_in2" = 1e3 * LBF * IN * IN; "derived"
        KipFt2 "kip_ft2" = 1e3 * LBF * FT * FT; "derived"
    }
    hint { }
}

quantities! {
    /// A length on the ground or a depth.
    Length(LengthUnit) shown M | Ft;
    /// The size of a part, a gap or a movement.
    Size(LengthUnit) shown Mm | In;
    /// A force.
    Force(ForceUnit) shown KN | Lbf;
    /// A stress in or a strength of soil.
    SoilStress(StressUnit) shown KPa | Psf;
    /// A stress in or a strength of steel or concrete.
    SteelStress(StressUnit) shown MPa | Ksi;
    /// A pressure in a hydraulic line.
    Pressure(StressUnit) shown MPa | Psi;
    /// A load on an area.
    AreaLoad(StressUnit) shown KPa | Psf;
    /// A torque on a shaft.
    Torque(MomentUnit) shown KNM | FtLbf;
    /// A bending moment.
    Moment(MomentUnit) shown KNM | FtLbf;
    /// A load on a length of beam.
    LineLoad(LineLoadUnit) shown KNPerM | Plf;
    /// A weight of a volume.
    UnitWeight(UnitWeightUnit) shown KNPerM3 | Pcf;
    /// A plane angle.
    Angle(AngleUnit) shown Deg | Deg;
    /// A capacity per torque.
    TorqueFactor(PerLengthUnit) shown PerM | PerFt;
    /// An area of a helix or a section.
    Area(AreaUnit) shown M2 | Ft2;
    /// A volume.
    Volume(VolumeUnit) shown M3 | Yd3;
    /// A volume a motor displaces in one turn.
    Displacement(DisplacementUnit) shown Cm3PerRev | In3PerRev;
    /// A volume flow.
    Flow(FlowUnit) shown LPerMin | GalPerMin;
    /// A speed of rotation.
    RotationalSpeed(RotationUnit) shown Rpm | Rpm;
    /// A speed at which a pile goes down.
    PenetrationRate(VelocityUnit) shown MPerMin | FtPerMin;
    /// A mass.
    Mass(MassUnit) shown Kg | Lb;
    /// A span of time.
    Duration(DurationUnit) shown H | H;
    /// A temperature.
    Temperature(TemperatureUnit) shown DegC | DegF;
    /// A freezing index.
    FreezingIndex(FreezingIndexUnit) shown CDay | FDay;
    /// A thermal conductivity.
    ThermalConductivity(ConductivityUnit) shown WPerMK | BtuPerHFtF;
    /// A heat capacity of a volume.
    HeatCapacity(HeatCapacityUnit) shown MJPerM3K | BtuPerFt3F;
    /// A heat of a volume, such as the latent heat of its water.
    LatentHeat(HeatUnit) shown MJPerM3 | BtuPerFt3;
    /// A difference of temperature.
    TemperatureDifference(TemperatureDifferenceUnit) shown K | R;
    /// A thermal resistance of a layer.
    ThermalResistance(ThermalResistanceUnit) shown M2KPerW | HFt2FPerBtu;
    /// A segregation potential.
    SegregationPotential(SegregationUnit) shown Mm2PerDayK | Mm2PerDayK;
    /// A sensitivity to stress.
    StressSensitivity(InverseStressUnit) shown PerMPa | PerKsf;
    /// A speed at which ground heaves.
    HeaveRate(VelocityUnit) shown MmPerDay | InPerDay;
    /// A span of time in the life of a structure.
    Lifetime(DurationUnit) shown Year | Year;
    /// A length of a season.
    Season(DurationUnit) shown Day | Day;
    /// A thickness of a coating or of steel lost.
    Coat(LengthUnit) shown Um | Mil;
    /// A loss of thickness over time.
    LossRate(LossRateUnit) shown UmPerYear | MilPerYear;
    /// A resistivity of the ground.
    Resistivity(ResistivityUnit) shown OhmM | OhmCm;
    /// A content by mass.
    Content(ContentUnit) shown MgPerKg | Ppm;
    /// An area of steel.
    SteelArea(AreaUnit) shown Mm2 | In2;
    /// A subgrade modulus.
    SubgradeModulus(SubgradeUnit) shown MNPerM3 | Pci;
    /// A stiffness of a support.
    SpringStiffness(SpringUnit) shown KNPerM | KipPerIn;
    /// A stiffness against rotation.
    RotationalStiffness(RotationalSpringUnit) shown KNMPerRad | KipFtPerRad;
    /// A flexural rigidity.
    FlexuralRigidity(RigidityUnit) shown KNM2 | KipFt2;
    /// A torsional rigidity.
    TorsionalRigidity(RigidityUnit) shown KNM2 | KipFt2;
}

/// Roles of one dimension pass into each other freely.
macro_rules! same_dimension {
    ($($a:ident $b:ident;)+) => { $(
        impl From<$a> for $b { fn from(q: $a) -> $b { $b::from_si(q.si()) } }
        impl From<$b> for $a { fn from(q: $b) -> $a { $a::from_si(q.si()) } }
    )+ };
}

same_dimension! {
    Length Size;
    SoilStress SteelStress;
    SoilStress AreaLoad;
    SteelStress Pressure;
    Torque Moment;
    Length Coat;
    Size Coat;
    Area SteelArea;
    Duration Lifetime;
    Duration Season;
}
