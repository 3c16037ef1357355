using ElbowAssist.Anatomy;
using ElbowAssist.Phantom;

namespace ElbowAssist.Cli.Simulating;

/// <summary>What <c>simulate</c> was asked to do.</summary>
/// <param name="FirstSeed">Seed of the first patient.</param>
/// <param name="Count">Patients; each next one takes the next seed.</param>
/// <param name="OutputFolder">Folder for the films.</param>
/// <param name="Views">Views of each patient.</param>
/// <param name="Options">Ages, injuries, positioning.</param>
/// <param name="Size">Pixels along each side.</param>
/// <param name="BonesFolder">Folder of bones that stand in for the drawn ones, or null.</param>
/// <param name="Subject">Elbows, or pictures without one.</param>
internal sealed record SimulateRequest(
    ulong FirstSeed, int Count, string OutputFolder, IReadOnlyList<View> Views, SimulationOptions Options, int Size, string? BonesFolder, Subject Subject = Subject.Elbow);
