using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.NearMiss.Rendering;

/// <summary>
/// A capsule whose radius changes linearly, flattened across one direction; with a length of zero a spheroid. Carving
/// parts are cut out of the parts before them.
/// </summary>
internal struct NearMissPart
{
    public Vec3 From, To;

    /// <summary>Unit vector along which the section is flattened, and by how much (1 = round, 2 = half as thick).</summary>
    public Vec3 Across;
    public float Flattening;
    public float RadiusFrom, RadiusTo;

    /// <summary>1 if the part is cut out, 0 if it is joined.</summary>
    public int Carves;
}

/// <summary>What a solid is made of.</summary>
internal enum NearMissMaterial
{
    /// <summary>Shell of compact bone around spongy bone.</summary>
    Bone,

    /// <summary>Solid metal.</summary>
    Metal,

    /// <summary>Air inside the body: takes the soft tissue away.</summary>
    Air,
}

/// <summary>A run of parts that make up one bone, implant or air space.</summary>
internal struct NearMissSolid
{
    public int First, Count;
    public NearMissMaterial Material;

    /// <summary>Width over which the parts are blended, millimetres.</summary>
    public float Join;

    /// <summary>Bounding sphere.</summary>
    public Vec3 BoundCentre;
    public float BoundRadius;

    /// <summary>Middle, unit direction and half length of the long axis.</summary>
    public Vec3 Axis;
    public float HalfLength;

    /// <summary>Cortex thickness and bone volume fraction in the middle and at the ends.</summary>
    public float CortexMiddle, CortexEnd, SpongyMiddle, SpongyEnd;
}

/// <summary>A body region on one film, but for its solids and parts. No references, so that it can live on a GPU.</summary>
internal struct NearMissScene
{
    public CameraGeometry Camera;

    /// <summary>Parts of the skin surface and the width of their blends.</summary>
    public int SoftFirst, SoftCount;
    public float SoftJoin;

    public int SolidCount;

    /// <summary>Skin and fat layer thickness; share of fat in the planes between muscles.</summary>
    public float Skin, FatLayer, Marbling;

    /// <summary>Cycles of the muscle texture per millimetre along x, y and z.</summary>
    public Vec3 Grain;

    /// <summary>Cast between two distances from the skin; none if the outer is not larger.</summary>
    public float CastInner, CastOuter;
    public uint NoiseSeed;
}

/// <summary>Where the parts and solids of a scene lie: an array on the CPU, device memory on a GPU.</summary>
internal interface INearMissStore
{
    NearMissPart Part(int index);

    NearMissSolid Solid(int index);
}
