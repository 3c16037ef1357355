using ElbowAssist.Phantom.Mesh.Surfaces;
using ElbowAssist.Phantom.Rendering.Field;
using MathNet.Numerics.LinearAlgebra.Double;

namespace ElbowAssist.Phantom.Mesh.Registration;

/// <summary>
/// The three bones of a right elbow where their files place them, in one frame, about as they lie in the body. From that
/// alone the frames of the bones are roughly found.
/// </summary>
internal sealed record AssembledBones(TriangleMesh Humerus, TriangleMesh Ulna, TriangleMesh Radius)
{
    /// <summary>Origin near the middle of the flexion axis, X anterior, Y proximal, Z lateral.</summary>
    public Frame JointFrame()
    {
        var (distalEnd, proximal) = End(Humerus, Middle(Ulna.Vertices));
        var height = Along(distalEnd, proximal);
        proximal = MainDirection(Part(Humerus, p => height(p) is > 45 and < 140), proximal);
        height = Along(distalEnd, proximal);
        var end = Humerus.Vertices.Min(height);
        var joint = Part(Humerus, p => height(p) < end + 20);

        // The joint end is widest between the epicondyles; the radius lies on its lateral side.
        var (ulnaEnd, alongUlna) = End(Ulna, distalEnd);
        var (radiusEnd, alongRadius) = End(Radius, distalEnd);
        var toRadius = Middle(Part(Radius, p => (p - radiusEnd).Dot(alongRadius) < 40)) - Middle(Part(Ulna, p => (p - ulnaEnd).Dot(alongUlna) < 55));
        var across = Part(Humerus, p => height(p) < end + 40).Select(p => p - (proximal * p.Dot(proximal))).ToList();
        var lateral = MainDirection(across, toRadius - (proximal * toRadius.Dot(proximal)));
        return Frame.From(Middle(joint), proximal.Cross(lateral).Unit, proximal);
    }

    /// <summary>Origin of the joint, X distal along the ulna, Y to the flexor side, Z lateral.</summary>
    public Frame ForearmFrame(Frame joint)
    {
        var (end, distal) = End(Ulna, joint.Origin);
        distal = MainDirection(Part(Ulna, p => (p - end).Dot(distal) is > 45 and < 140), distal);
        var flexor = joint.AxisZ.Cross(distal).Unit;
        return Frame.From(joint.Origin, distal, flexor);
    }

    /// <summary>Origin at the middle of the head, X distal along the neck, Y and Z as those of the forearm.</summary>
    public Frame RadiusFrame(Frame forearm)
    {
        var (end, distal) = End(Radius, forearm.Origin);
        distal = MainDirection(Part(Radius, p => (p - end).Dot(distal) < 60), distal);
        var top = Part(Radius, p => (p - end).Dot(distal) < 6);
        var middle = Middle(top);
        var origin = middle + (distal * (end - middle).Dot(distal));
        return Frame.From(origin, distal, forearm.AxisZ.Cross(distal).Unit);
    }

    /// <summary>The end of a long bone that is nearer to a place, and the direction from it to the other end.</summary>
    private static (Vec3 End, Vec3 Away) End(TriangleMesh bone, Vec3 place)
    {
        var middle = Middle(bone.Vertices);
        var axis = MainDirection(bone.Vertices, middle - place);
        var end = bone.Vertices.MinBy(Along(middle, axis));
        return (end, axis);
    }

    private static Func<Vec3, float> Along(Vec3 from, Vec3 axis) => p => (p - from).Dot(axis);

    private static List<Vec3> Part(TriangleMesh bone, Func<Vec3, bool> where)
    {
        var part = bone.Vertices.Where(where).ToList();
        return part.Count >= 3
            ? part
            : throw new InvalidDataException("The bones do not look like the bones of one elbow: too little of them lies near the joint; check the unit and that they lie in one frame.");
    }

    private static Vec3 Middle(IReadOnlyList<Vec3> points)
    {
        var sum = default(Vec3);
        foreach (var p in points)
        {
            sum += p;
        }

        return sum * (1f / points.Count);
    }

    /// <summary>The direction in which points spread most, turned towards another.</summary>
    private static Vec3 MainDirection(IReadOnlyList<Vec3> points, Vec3 towards)
    {
        var middle = Middle(points);
        var spread = new DenseMatrix(3, 3);
        foreach (var p in points)
        {
            var q = p - middle;
            double[] v = [q.X, q.Y, q.Z];
            for (var i = 0; i < 9; i++)
            {
                spread[i / 3, i % 3] += v[i / 3] * v[i % 3];
            }
        }

        var axes = spread.Evd(MathNet.Numerics.LinearAlgebra.Symmetricity.Symmetric).EigenVectors;
        var main = new Vec3((float)axes[0, 2], (float)axes[1, 2], (float)axes[2, 2]);
        return main.Dot(towards) < 0 ? -main : main;
    }
}
