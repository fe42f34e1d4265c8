using System.Text.Json;

namespace InfusionSim.Cli.Pictures;

/// <summary>What pictures are called on the command line, and what each shows.</summary>
public static class PictureNames
{
    /// <summary>Names of all pictures, in their order.</summary>
    public static IReadOnlyList<string> All { get; } = [.. Enum.GetValues<PictureKind>().Select(Of)];

    /// <summary>Name of a picture: front, tool-side.</summary>
    /// <param name="kind">The picture.</param>
    public static string Of(PictureKind kind) => JsonNamingPolicy.KebabCaseLower.ConvertName(kind.ToString());

    /// <summary>The pictures with what each shows, one a line.</summary>
    public static string Explained { get; } = string.Join("\n", Enum.GetValues<PictureKind>().Select(kind => $"{Of(kind),-12}{Says(kind)}"));

    private static string Says(PictureKind kind) => kind switch
    {
        PictureKind.Front => "when the front passes each place, seen from the bag side",
        PictureKind.ToolSide => "the same on the tool side, seen through the panel; needs a mesh, a core, peel ply or sub-layers",
        PictureKind.BothSides => "bag side and tool side next to each other",
        PictureKind.Lag => "how many minutes the tool side is behind, and where it is longest behind",
        PictureKind.Lines => "pressure along each line that has a bore or a hose",
        PictureKind.Speed => "how fast the front runs when it comes to each place",
        PictureKind.Capillary => "its capillary number, beside the published range; needs resin.surfaceTensionMnPerM",
        PictureKind.GelMargin => "how much of the resin's flow up to gel is left when the front comes",
        PictureKind.Pressure => "resin pressure at one moment, see --at",
        PictureKind.Progress => "how much is full against time",
        PictureKind.Strip => "moments side by side",
        _ => "the front on the move",
    };
}
