using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom.Mesh.Registration;

/// <summary>How far a mesh lies from the parametric bone that was fitted to it; millimetres.</summary>
/// <param name="Bone">Name of the bone.</param>
/// <param name="Mean">Mean over the surface of the mesh near the joint.</param>
/// <param name="Percentile95">95th percentile.</param>
/// <param name="Largest">Largest.</param>
public sealed record BoneFitDistances(string Bone, double Mean, double Percentile95, double Largest);

/// <summary>One registered bone.</summary>
/// <param name="Frame">The parametric bone's frame where the mesh lies.</param>
/// <param name="Shape">The elbow with the fitted parameters of this bone.</param>
/// <param name="Distances">What is left after fitting.</param>
internal sealed record BoneFit(Frame Frame, ElbowShape Shape, BoneFitDistances Distances);
