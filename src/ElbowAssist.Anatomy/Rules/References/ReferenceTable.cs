using static ElbowAssist.Anatomy.Rules.Publications;

namespace ElbowAssist.Anatomy.Rules.References;

/// <summary>
/// Published ranges to print beside a measurement. Sources that contradict each other all stand here and are all
/// printed.
/// </summary>
public static class ReferenceTable
{
    private const int Grown = 16 * 12;
    private const string Ahl = AnteriorHumeralLineRule.Position;
    private const string AhlShaft = "anterior-humeral-line.shaft.position";

    /// <summary>Every row.</summary>
    public static IReadOnlyList<ReferenceRow> Rows { get; } =
    [
        .. AnteriorHumeralLine(Ahl),
        .. AnteriorHumeralLine(AhlShaft),
        new(RadiocapitellarRule.LateralNeck, 0, Grown, "misses in 1.2 % of uninjured children; central third in 77.8 %", Ramirez),
        new(RadiocapitellarRule.LateralNeck, 12, 14 * 12, "central third of the ossified capitellum in 68 % (printed; the count given is 54 of 82) on sagittal magnetic resonance", FaderLine),
        new(RadiocapitellarRule.LateralShaft, 0, Grown, "misses in 12.7 % of uninjured children; central third in 44.7 %", Ramirez),
        new(RadiocapitellarRule.ApNeck, 0, Grown, "central third in 55.5 % of uninjured children", Ramirez),
        new(RadiocapitellarRule.ApNeck, 0, Grown, "crosses on average 30 % from the lateral edge (0 to 64 %) in 37 children; misses in 2 of 37", LateralHumeralLine),
        new(RadiocapitellarRule.ApShaft, 0, Grown, "off-centre is common in children; central third of the ossified capitellum in 27 % on coronal magnetic resonance", FaderLine),
        new(RadiocapitellarRule.LateralNeck, Grown, null, "offset over 1.2 mm in 62.9 % and over 3.4 mm in 12.9 % of 53 healthy adults on magnetic resonance", Schamberger),
        new("radiocapitellar-ratio", 12 * 12, null, "mean 0.04, SD 0.04, range -0.07 to 0.19; window -0.05 to 0.13 in 40 healthy adolescents and adults", Rouleau),
        new("shaft-condylar-angle", 0, Grown, "mean 41.6°, range 30 to 70° in 142 children", Simanovsky),
        new("shaft-condylar-angle", 0, 15 * 12, "below 40° for an undisplaced supracondylar fracture: sensitivity 76 %, specificity 93 % in 53 children; no limit is set here", ShaftCondylar2019),
        new("lateral-capitellohumeral-angle", 0, 12 * 12, "mean 50.8°, SD 6 in 71 children", Shank),
        new("lateral-capitellohumeral-angle", 2 * 12, 12 * 12, "mean 45°, range 22 to 70° in 62 children", Hasegawa2018),
        new("lateral-capitellohumeral-angle", 0, 12 * 12, "mean 45.3°, SD 8.2 in 112 children", Kang1994),
        new("baumann-angle", 0, 12 * 12, "convention A: mean 71.5°, SD 6.2 in 71 children; two readers 0.80", Shank),
        new("baumann-angle", 2 * 12, 12 * 12, "convention A: mean 71°, range 56 to 86° in 62 children; two readers 0.50 to 0.52", Hasegawa2018),
        new("baumann-angle", 3 * 12, 11 * 12, "convention A: extremes 52.0 and 89.8° in 141 children", BaumannPractice),
        new("carrying-angle", 0, Grown, "clinical: slight varus at birth, 6° at 6 years, 11° at 15 years in 921 children", Siriraj),
        new("carrying-angle", 2 * 12, 12 * 12, "on films: mean 14.6°, range 4 to 28° in 62 children", Hasegawa2017),
        new("carrying-angle", 0, Grown, "on films: right 8.85°, SD 2.09; left 9.07°, SD 2.13 in 140 children", Kushwaha),
        new("carrying-angle", Grown, null, "mean 12.42°, SD 4.06 in 44 arms", Zampagni),
        new("radial-neck-shaft-angle", Grown, null, "12.2° off straight, range 2 to 19.5° (printed as 167.8°, 160.5 to 178°) in 40 dry radii", NeckMorphometry),
        new("radial-neck-shaft-angle", Grown, null, "17°, range 6 to 28° against the proximal shaft in 27 cadavers", VanRiet),
        new("ulnohumeral-gap", Grown, null, "4 mm or more after a reduction: 10 dislocations against 20 uninjured elbows", Coonrad),
        new("fat-pad.anterior.angle", 0, Grown, "children's cut-off 16°", Poppelaars),
    ];

    /// <summary>Rows for a measurement at an age; all ages of the table if the age is unknown.</summary>
    public static IReadOnlyList<ReferenceRow> For(string measurement, Patient patient)
    {
        ArgumentNullException.ThrowIfNull(patient);
        return
        [
            .. Rows.Where(r => r.Measurement == measurement)
                .Where(r => patient.AgeMonths is not { } age || (age >= r.FromMonths && (r.BelowMonths is not { } below || age < below))),
        ];
    }

    private static IEnumerable<ReferenceRow> AnteriorHumeralLine(string name) =>
    [
        new(name, 0, 24, "under 2 years the position alone; middle third in 32 %", AnteriorLineThesis),
        new(name, 24, 60, "under 4 years anterior and middle third about equally common", Herman),
        new(name, 4, 120, "anterior third 31 %, middle third 52 %, posterior third 18 % of 60 uninjured elbows of 4 months to 9 years", Herman),
        new(name, 24, Grown, "middle third in 88 % of 493 children", AnteriorLineThesis),
        new(name, 0, 48, "middle third in 25 % at 0 to 3 years", Baskovic),
        new(name, 48, 228, "middle third in 88.5 % of 200 of 0 to 18 years, in all of 16 to 18 years", Baskovic),
        new(name, 228, null, "no adult series found; middle third in all of 16 to 18 years", Baskovic),
    ];
}
