using static WeldTrace.Domain.Compliance.SourceKnown;

namespace WeldTrace.Domain.Compliance;

/// <summary>A requirement, and how it is looked up.</summary>
internal sealed record RequirementRule(
    Requirement Requirement,
    Func<VesselFile, ComplianceEvidence> Find
);

/// <summary>The requirements; their texts are our own words, and say of their sources how well they are known.</summary>
internal static class RequirementRules
{
    public static IReadOnlyList<RequirementRule> All { get; } =
    [
        Rule(
            "1",
            "A weld is made to a released procedure; its qualification is complete and signed.",
            "Ship classification rules for materials, July 2022, Ch. 12, 6.3.2 to 6.3.6",
            Read,
            RequirementFinders.Qualified
        ),
        Rule(
            "2",
            "Each weld has its own procedure, and a run starts only against the released revision.",
            "NASA-STD-5006A w/Change 2, 4.7.5, GWR 58, 80; ISO 25239-5:2020, 4.10",
            Read,
            f => f.EachGate("F2")
        ),
        Rule(
            "3",
            "What is welded lies inside the range of the qualification.",
            "Ship classification rules for materials, July 2022, Ch. 12, 6.3.7",
            Read,
            f => f.EachGate("F3")
        ),
        Rule(
            "4",
            "Operators hold a qualification that is current and covers the run.",
            "ISO 25239-5:2020, 4.2.2 and 4.12.2",
            Read,
            f => f.EachGate("F4")
        ),
        Rule(
            "5",
            "Machine and instruments are inside their calibration.",
            "NASA-STD-5006A w/Change 2, GWR 13, 14, 18 to 20",
            Read,
            f => f.EachGate("F5")
        ),
        Rule(
            "6",
            "The tool is marked, of the procedure's design, inspected, and within its service life.",
            "ISO 25239-5:2020, 4.6.1; NASA-STD-5006A w/Change 2, GWR 38 to 42",
            Read,
            f => f.EachGate("F6")
        ),
        Rule(
            "7",
            "Parent alloy and temper are verified before welding, with their inspection documents.",
            "ISO 25239-5:2020, 4.12.2; NASA-STD-5006A w/Change 2, GWR 28, 29",
            Read,
            f => f.EachGate("F7")
        ),
        Rule(
            "8",
            "Cleaning, joint preparation and fit-up are within the procedure.",
            "ISO 25239-5:2020, 4.7.1, 4.7.2 and 4.12.2",
            Read,
            f => f.EachGate("F8")
        ),
        Rule(
            "9",
            "Heat treatment is traceable to the treated part.",
            "ISO 25239-5:2020, 4.11",
            Read,
            RequirementFinders.HeatTreated
        ),
        Rule(
            "10",
            "Seven checks are confirmed before each run.",
            "ISO 25239-5:2020, 4.12.2",
            Read,
            f => f.EachRun(r => r.Checks is { Count: 7 }, "the seven checks are not on record.")
        ),
        Rule(
            "11",
            "The variables of the weld are recorded while it is made, and the raw trace is kept.",
            "Ship classification rules for materials, July 2022, Ch. 13, 9.2.4; ISO 25239-5:2020, 4.12.3",
            Read,
            f => f.EachRun(r => r.Log is not null, "no process log.")
        ),
        Rule(
            "12",
            "A person certifies each production weld.",
            "NASA-STD-5006A w/Change 2, GWR 128",
            Read,
            f => f.EachRun(r => r.SignedAt is not null, "not signed.")
        ),
        Rule(
            "13",
            "A departure opens a case with its cause, and is decided before the vessel goes on.",
            "NASA-STD-5006A w/Change 2, GWR 81 to 83, 129",
            Read,
            RequirementFinders.Departures
        ),
        Rule(
            "14",
            "A repair has a case, stays inside the zone of the weld, and is examined again.",
            "NASA-STD-5006A w/Change 2, 4.11, GWR 116 to 119",
            Read,
            RequirementFinders.Repairs
        ),
        Rule(
            "15",
            "Production tests that fell due were made.",
            "Ship classification rules for materials, July 2022, Ch. 13, 9.2.3",
            Read,
            f =>
                f.Design.ProductionTests is null
                    ? ComplianceEvidence.NotAsked("The design asks for none.")
                    : f.EachGate("F21")
        ),
        Rule(
            "16",
            "Production welds are examined visually.",
            "Ship classification rules for materials, July 2022, Ch. 13, 9.2.5; NASA-STD-5006A w/Change 2, GWR 84, 130",
            Read,
            RequirementFinders.Visual
        ),
        Rule(
            "17",
            "Every examination that the design plans is recorded, each with method and acceptance standard.",
            "ISO 25239-5:2020, 4.12.4",
            Read,
            RequirementFinders.Planned
        ),
        Rule(
            "18",
            "A vessel that must be tight has a limit of its leak rate and passed a leak test.",
            "NASA-STD-5006A w/Change 2, GWR 12",
            Read,
            f => f.PassedTest<Testing.LeakTest>("leak test")
        ),
        Rule(
            "19",
            "The proof pressure follows from a rule, and the vessel held it.",
            "Directive 2014/68/EU, annex I, 7.4",
            Quoted,
            f => f.PassedTest<Testing.PressureTest>("pressure test")
        ),
        Rule(
            "20",
            "Instruments that decide are inside their calibration on the day of the test.",
            "NASA-STD-8739.12A, 4.1, 4.2.2",
            Read,
            RequirementFinders.Calibrated
        ),
        Rule(
            "21",
            "The lot's destructive samples passed before the vessel is accepted.",
            "common practice, no source",
            FromMemory,
            RequirementFinders.Samples
        ),
        Rule(
            "22",
            "Each part is traced to its lot or cast.",
            "Directive 2014/68/EU, annex I, 3.1.5",
            FromMemory,
            RequirementFinders.Parts
        ),
        Rule(
            "23",
            "The records are complete before the vessel is released.",
            "ISO 3834-2, clause 18",
            FromMemory,
            RequirementFinders.Accepted
        ),
        Rule(
            "24",
            "A signature shows name, time and meaning, and is bound to one version of its record.",
            "21 CFR 11.50 and 11.70",
            Quoted,
            RequirementFinders.Signed
        ),
    ];

    private static RequirementRule Rule(
        string number,
        string text,
        string source,
        SourceKnown known,
        Func<VesselFile, ComplianceEvidence> find
    ) => new(new Requirement(number, text, source, known), find);
}
