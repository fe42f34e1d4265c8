using InfusionSim.Protocol.V1;
using Path = System.IO.Path;

namespace InfusionSim.Cli.Plans;

/// <summary>Tells resins of the same name apart by their files.</summary>
public static class ResinNames
{
    /// <summary>The same resins; those that share a name carry their file's name behind it.</summary>
    /// <param name="resins">The resins; their names may be changed.</param>
    /// <param name="paths">Their files, in the same order.</param>
    public static IReadOnlyList<Resin> Apart(IReadOnlyList<Resin> resins, IReadOnlyList<string> paths)
    {
        ArgumentNullException.ThrowIfNull(resins);
        ArgumentNullException.ThrowIfNull(paths);
        string[] names = [.. resins.Select(static resin => resin.Name)];
        for (int k = 0; k < resins.Count; k++)
            if (names.Count(name => name == names[k]) > 1) resins[k].Name = $"{names[k]} ({Path.GetFileNameWithoutExtension(paths[k])})";
        return resins;
    }
}
