using System.Reflection;
using System.Runtime.CompilerServices;

namespace ElbowAssist.Architecture;

/// <summary>What other programs see of the libraries: no types of native wrappers, and records that nobody can change.</summary>
public sealed class PublicSurfaceTests
{
    private static readonly string[] Wrapped = ["OpenCvSharp", "Microsoft.ML.OnnxRuntime", "SkiaSharp", "ILGPU", "SixLabors"];

    public static TheoryData<string> Libraries => [.. Assemblies().Select(a => a.GetName().Name!)];

    [Theory]
    [MemberData(nameof(Libraries))]
    public void PublicSignatures_NameNoTypeOfANativeWrapper(string library)
    {
        foreach (var type in Load(library).GetExportedTypes())
        {
            var named = Signature(type).SelectMany(Parts).Distinct();
            Assert.All(named, t => Assert.False(
                Wrapped.Any(w => t.Namespace?.StartsWith(w, StringComparison.Ordinal) == true), $"{type} shows {t}."));
        }
    }

    [Theory]
    [MemberData(nameof(Libraries))]
    public void PublicRecords_CannotBeChanged(string library)
    {
        foreach (var record in Load(library).GetExportedTypes().Where(t => t.GetMethod("<Clone>$") is not null))
        {
            var settable = record.GetProperties().Where(p => p.SetMethod is { IsPublic: true } set &&
                !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit)));
            Assert.True(!settable.Any(), $"{record} can be changed through {settable.FirstOrDefault()?.Name}.");
            Assert.All(record.GetFields(), f => Assert.True(f.IsLiteral || f.IsInitOnly, $"{record}.{f.Name} can be changed."));
        }
    }

    [Theory]
    [MemberData(nameof(Libraries))]
    public void StaticFields_HoldNoStateThatChanges(string library)
    {
        foreach (var field in Load(library).GetTypes().Where(t => !t.IsDefined(typeof(CompilerGeneratedAttribute)) && !t.Name.Contains('<', StringComparison.Ordinal))
            .SelectMany(t => t.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly)))
        {
            // Generated caches of source generators are named with an underscore or angle brackets.
            var generated = field.Name.StartsWith('_') || field.Name.Contains('<', StringComparison.Ordinal);
            Assert.True(field.IsInitOnly || field.IsLiteral || generated, $"{field.DeclaringType}.{field.Name} can change.");
        }
    }

    private static IEnumerable<Type> Signature(Type type) =>
    [
        .. type.BaseType is { } parent ? [parent] : Type.EmptyTypes,
        .. type.GetInterfaces(),
        .. type.GetProperties().Select(p => p.PropertyType),
        .. type.GetFields().Select(f => f.FieldType),
        .. type.GetConstructors().SelectMany(c => c.GetParameters()).Select(p => p.ParameterType),
        .. type.GetMethods().SelectMany(m => m.GetParameters().Select(p => p.ParameterType).Append(m.ReturnType)),
    ];

    private static IEnumerable<Type> Parts(Type type) => type.HasElementType
        ? Parts(type.GetElementType()!)
        : type.GetGenericArguments().SelectMany(Parts).Prepend(type);

    private static Assembly Load(string name) => Assembly.Load(new AssemblyName(name));

    private static IEnumerable<Assembly> Assemblies() =>
        Directory.EnumerateFiles(AppContext.BaseDirectory, "ElbowAssist.*.dll")
            .Select(f => Path.GetFileNameWithoutExtension(f)!)
            .Where(n => n != "ElbowAssist.Architecture")
            .Select(Load);
}
