using System.Runtime.CompilerServices;

namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>A point or direction in space, millimetres; plain floats so that the same code runs on a GPU.</summary>
internal readonly record struct Vec3(float X, float Y, float Z)
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 operator +(Vec3 a, Vec3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 operator -(Vec3 a, Vec3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 operator -(Vec3 a) => new(-a.X, -a.Y, -a.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 operator *(Vec3 a, float s) => new(a.X * s, a.Y * s, a.Z * s);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public float Dot(Vec3 b) => (X * b.X) + (Y * b.Y) + (Z * b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vec3 Cross(Vec3 b) => new((Y * b.Z) - (Z * b.Y), (Z * b.X) - (X * b.Z), (X * b.Y) - (Y * b.X));

    public float Length
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => MathF.Sqrt((X * X) + (Y * Y) + (Z * Z));
    }

    public Vec3 Unit
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => this * (1f / Length);
    }

    /// <summary>The coordinates; what a record would print holds <see cref="Unit"/>, and that itself again.</summary>
    public override string ToString() => FormattableString.Invariant($"({X}, {Y}, {Z})");
}
