using CsCheck;
using ElbowAssist.Geometry;
using ElbowAssist.Testing;

namespace ElbowAssist.Anatomy.Tests.Measurements;

/// <summary>Random invented elbows, from toddler sizes to large adults, and random ways in which a film may lie.</summary>
internal static class RandomElbow
{
    public static Gen<InventedElbow> Gen { get; } =
        from width in CsCheck.Gen.Double[8, 22]
        from bow in CsCheck.Gen.Double[-1, 1]
        from forward in CsCheck.Gen.Double[-8, 14]
        from distal in CsCheck.Gen.Double[12, 22]
        from radius in CsCheck.Gen.Double[4, 13]
        from whole in CsCheck.Gen.Bool
        from flexion in CsCheck.Gen.Double[20, 120]
        from radial in CsCheck.Gen.Double[-12, 12]
        from neck in CsCheck.Gen.Double[-15, 15]
        from head in CsCheck.Gen.Double[-6, 6]
        from tilt in CsCheck.Gen.Double[0, 60]
        from pad in CsCheck.Gen.Double[0, 40]
        from slope in CsCheck.Gen.Double[0, 40]
        from carrying in CsCheck.Gen.Double[-15, 25]
        from trochlea in CsCheck.Gen.Double[0.5, 8]
        select new InventedElbow
        {
            W = width,
            Bow = bow,
            CapitellumForward = forward,
            CapitellumDistal = distal,
            CapitellumRadius = radius,
            Rim = whole ? (-150, 180) : (-30, 130),
            Flexion = flexion,
            RadialOffset = radial,
            NeckTilt = neck,
            HeadForward = head,
            PhysisTilt = tilt,
            FatPad = pad,
            PhysisSlope = slope,
            Carrying = carrying,
            TrochleaOffset = trochlea,
        };

    public static Gen<Func<InventedElbow, InventedElbow>> Pose { get; } =
        from turn in CsCheck.Gen.Double[-180, 180]
        from mirrored in CsCheck.Gen.Bool
        from x in CsCheck.Gen.Double[-300, 300]
        from y in CsCheck.Gen.Double[-300, 300]
        from column in CsCheck.Gen.Double[0.08, 0.6]
        from row in CsCheck.Gen.Double[0.08, 0.6]
        select (Func<InventedElbow, InventedElbow>)(elbow => elbow with
        {
            Turn = turn,
            Mirrored = mirrored,
            Place = new Point(x, y),
            ColumnSpacing = column,
            RowSpacing = row,
        });
}
