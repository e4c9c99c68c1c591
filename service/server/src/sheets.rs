//! The drawings and tables of each calculation, with what they show. How one is chosen and
//! sent is in `table.rs`, how it is drawn in `bearwell-papers`.

use bearwell_engine::forecast::LengthForecast;
use bearwell_engine::frost::FrostEmbedment;
use bearwell_engine::helix::HelixCapacity;
use bearwell_engine::job::InstallationJob;
use bearwell_engine::layout::PileLayout;
use bearwell_engine::load_test::LoadTest;
use bearwell_engine::record::InstallationRecord;
use bearwell_engine::relocation::PileRelocation;
use bearwell_engine::torque::TorqueCapacity;

use crate::table::{Sheet, SheetNote, Sheets};

/// Drawings and tables of a pile layout.
pub struct LayoutSheets;

impl Sheets<PileLayout> for LayoutSheets {
    const ALL: &'static [Sheet<PileLayout>] = &[
        Sheet {
            note: SheetNote {
                media: "image/svg+xml",
                form: "plan",
                about: "the plan to scale: beams, form lines and openings, piles by type with \
                        their numbers and the reactions that govern, what piles keep away from, \
                        zones, slabs, what is proven.",
            },
            draw: bearwell_papers::layout_svg,
        },
        Sheet {
            note: SheetNote {
                media: "image/svg+xml",
                form: "plan_numbers",
                about: "the same with the numbers of the piles alone, without reactions; the \
                        table tells where they stand.",
            },
            draw: bearwell_papers::layout_numbers_svg,
        },
        Sheet {
            note: SheetNote {
                media: bearwell_papers::csv::CSV,
                form: "piles",
                about: "a row for each pile: its place, the loads that govern, its utilisation.",
            },
            draw: bearwell_papers::piles_csv,
        },
        Sheet {
            note: SheetNote {
                media: bearwell_papers::csv::CSV,
                form: "staking",
                about: "the stakes for the instrument: point, northing, easting, elevation, \
                        description, in the unit of the site grid that `staking` sends.",
            },
            draw: bearwell_papers::staking_csv,
        },
        Sheet {
            note: SheetNote {
                media: bearwell_papers::csv::CSV,
                form: "tape",
                about: "the distances for the tape where `staking` asks for them: along each \
                        string line, diagonals, ties of the corners.",
            },
            draw: bearwell_papers::tape_csv,
        },
        Sheet {
            note: SheetNote {
                media: bearwell_papers::DXF,
                form: "plan_dxf",
                about: "the plan as DXF (AC1015) in its own coordinates with its unit declared: \
                        beams, piles, string lines and control points, each on its layer.",
            },
            draw: bearwell_papers::plan_dxf,
        },
        Sheet {
            note: SheetNote {
                media: bearwell_papers::DXF,
                form: "site_dxf",
                about: "the same in the coordinates and the unit of the site grid that `staking` \
                        sends, x the easting, y the northing.",
            },
            draw: bearwell_papers::site_dxf,
        },
    ];
}

/// Drawings and tables of a relocation.
pub struct RelocationSheets;

impl Sheets<PileRelocation> for RelocationSheets {
    const ALL: &'static [Sheet<PileRelocation>] = &[
        Sheet {
            note: SheetNote {
                media: "image/svg+xml",
                form: "decision",
                about: "the request for decision, one page: the plan as it stands and what lies \
                        around the pile to a larger scale, where it was and where it may stand, \
                        a row for each way out with utilisations, what fails with its source and \
                        cost, an empty field for the answer of the engineer.",
            },
            draw: bearwell_papers::decision_svg,
        },
        Sheet {
            note: SheetNote {
                media: bearwell_papers::csv::CSV,
                form: "ways_out",
                about: "a row for each way out, best first: what is done, where the pile may \
                        stand, utilisations, what fails, cost.",
            },
            draw: bearwell_papers::ways_out_csv,
        },
    ];
}

/// Drawings of a helix capacity.
pub struct HelixSheets;

impl Sheets<HelixCapacity> for HelixSheets {
    const ALL: &'static [Sheet<HelixCapacity>] = &[Sheet {
        note: SheetNote {
            media: "image/svg+xml",
            form: "section",
            about: "the section to scale: the ground with the pile, its helices and water, and \
                    the capacity over depth where `depth_curve` asks for `points`.",
        },
        draw: bearwell_papers::helix_svg,
    }];
}

/// Drawings of a pile in ground that moves.
pub struct FrostSheets;

impl Sheets<FrostEmbedment> for FrostSheets {
    const ALL: &'static [Sheet<FrostEmbedment>] = &[Sheet {
        note: SheetNote {
            media: "image/svg+xml",
            form: "section",
            about: "the section to scale: pile, beam and void form, frost line, fill, active zone \
                    and collapsing ground, each force over the depths between which it acts, the \
                    rules for the top helix with the one that governs.",
        },
        draw: bearwell_papers::frost_svg,
    }];
}

/// The card for the cab, drawn and as a table.
pub struct TorqueSheets;

impl Sheets<TorqueCapacity> for TorqueSheets {
    const ALL: &'static [Sheet<TorqueCapacity>] = &[
        Sheet {
            note: SheetNote {
                media: "image/svg+xml",
                form: "cab_card",
                about: "the card for the cab where `cab_card` asks for it: torque against the \
                        pressure of each gear, target and shaft limit in large figures.",
            },
            draw: bearwell_papers::cab_card_svg,
        },
        Sheet {
            note: SheetNote {
                media: bearwell_papers::csv::CSV,
                form: "cab_card",
                about: "the card for the cab as a table: a row for each step, then target and \
                        shaft limit as rounded for the operator.",
            },
            draw: bearwell_papers::cab_card_csv,
        },
    ];
}

/// Drawings and tables of a load test.
pub struct LoadTestSheets;

impl Sheets<LoadTest> for LoadTestSheets {
    const ALL: &'static [Sheet<LoadTest>] = &[
        Sheet {
            note: SheetNote {
                media: "image/svg+xml",
                form: "load_displacement",
                about: "load against displacement: the measured curve, the elastic line, the line \
                        of the criterion in force, a point for each criterion, the failure load.",
            },
            draw: bearwell_papers::load_test_svg,
        },
        Sheet {
            note: SheetNote {
                media: bearwell_papers::csv::CSV,
                form: "criteria",
                about: "a row for each criterion: its load, its displacement and torque factor, \
                        or why it does not hold.",
            },
            draw: bearwell_papers::load_test_csv,
        },
    ];
}

/// Drawings and tables of an installation record.
pub struct RecordSheets;

impl Sheets<InstallationRecord> for RecordSheets {
    const ALL: &'static [Sheet<InstallationRecord>] = &[
        Sheet {
            note: SheetNote {
                media: "image/svg+xml",
                form: "torque_depth",
                about: "torque and advance over depth to scale: the readings as they were judged, \
                        the window and the torque that counts, what must be reached, the pile \
                        with frost, fill and ground, and what to do next.",
            },
            draw: bearwell_papers::record_svg,
        },
        Sheet {
            note: SheetNote {
                media: bearwell_papers::csv::CSV,
                form: "rows",
                about: "a line for each row of the log as it was judged: depth, torque, standing, \
                        advance ratio, speed and note.",
            },
            draw: bearwell_papers::record_csv,
        },
    ];
}

/// Drawings and tables of a job.
pub struct JobSheets;

impl Sheets<InstallationJob> for JobSheets {
    const ALL: &'static [Sheet<InstallationJob>] = &[
        Sheet {
            note: SheetNote {
                media: "image/svg+xml",
                form: "small_multiples",
                about: "every pile in a cell of its own, torque over depth to the same scales, \
                        with its verdict; counts, the lot and what is next.",
            },
            draw: bearwell_papers::job_svg,
        },
        Sheet {
            note: SheetNote {
                media: bearwell_papers::csv::CSV,
                form: "piles",
                about: "a row for each pile: its verdict with the codes behind it, depth, torques \
                        and the first thing to do.",
            },
            draw: bearwell_papers::job_csv,
        },
    ];
}

/// Tables of a forecast.
pub struct ForecastSheets;

impl Sheets<LengthForecast> for ForecastSheets {
    const ALL: &'static [Sheet<LengthForecast>] = &[Sheet {
        note: SheetNote {
            media: bearwell_papers::csv::CSV,
            form: "piles",
            about: "a row for each pile to come: its place, the bands of its final depth, its \
                    extensions.",
        },
        draw: bearwell_papers::forecast_csv,
    }];
}
