using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using InfusionSim.Architecture.Tests.Metadata;

namespace InfusionSim.Architecture.Tests;

/// <summary>The built projects and the files they were built from.</summary>
internal static class House
{
    /// <summary>Assembly names of the projects under src and plots, in the order of the arrows.</summary>
    public static readonly IReadOnlyList<string> Projects =
    [
        "InfusionSim.Numerics", "InfusionSim.Physics", "InfusionSim.Planning", "InfusionSim.Protocol", "InfusionSim.Service", "InfusionSim.Plots", "infusionsim",
    ];

    private static readonly Dictionary<string, IReadOnlyList<TypeUse>> Uses = [];

    /// <summary>Folder that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>Where a built project lies.</summary>
    public static string PathOf(string project) => Path.Combine(AppContext.BaseDirectory, project + ".dll");

    /// <summary>Every type that a project uses, with the place that uses it.</summary>
    public static IReadOnlyList<TypeUse> UsesOf(string project)
    {
        lock (Uses)
        {
            if (!Uses.TryGetValue(project, out IReadOnlyList<TypeUse>? uses)) Uses[project] = uses = TypeUseReader.Read(PathOf(project));
            return uses;
        }
    }

    /// <summary>Opens a built project's metadata for one look.</summary>
    public static T Look<T>(string project, Func<MetadataReader, T> look)
    {
        using PEReader file = new(File.OpenRead(PathOf(project)));
        return look(file.GetMetadataReader());
    }

    /// <summary>Source files of the house below the named folders, built output left out, as paths from the root.</summary>
    public static IEnumerable<string> Sources(string pattern, params string[] folders) =>
        from folder in folders
        where Directory.Exists(Path.Combine(Root, folder))
        from file in Directory.EnumerateFiles(Path.Combine(Root, folder), pattern, SearchOption.AllDirectories)
        let path = Path.GetRelativePath(Root, file).Replace('\\', '/')
        where !path.Contains("/bin/", StringComparison.Ordinal) && !path.Contains("/obj/", StringComparison.Ordinal)
        orderby path
        select path;

    /// <summary>Text of a file named from the root.</summary>
    public static string Text(string path) => File.ReadAllText(Path.Combine(Root, path));

    private static string FindRoot()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
            if (File.Exists(Path.Combine(at.FullName, "InfusionSim.sln"))) return at.FullName;
        throw new InvalidOperationException("InfusionSim.sln does not lie above the tests.");
    }
}
