using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Landmarks;

/// <summary>
/// Four places that give position, turn, size and mirror image of an elbow on a film; pixels of the original image.
/// W is the smallest outer anteroposterior width of the humeral shaft in its distal half.
/// </summary>
/// <param name="Shaft">On the humeral shaft axis, 2.0 W above the roof of the olecranon fossa.</param>
/// <param name="Joint">Centre of the flexion axis between capitellum and trochlea.</param>
/// <param name="Forearm">Midway between radius and ulna, 4 W distal to the joint.</param>
/// <param name="Mark">Lateral view: tip of the olecranon. AP and oblique: tip of the medial epicondyle.</param>
public readonly record struct LocatorPoints(Point Shaft, Point Joint, Point Forearm, Point Mark)
{
    /// <summary>Names in the order of the locator channels of a view model.</summary>
    public static IReadOnlyList<string> Names { get; } = ["shaft", "joint", "forearm", "mark"];
}
