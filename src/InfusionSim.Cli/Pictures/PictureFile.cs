using InfusionSim.Cli.Commands;

namespace InfusionSim.Cli.Pictures;

/// <summary>Where a picture goes: the ending of the name chooses the format.</summary>
public static class PictureFile
{
    /// <summary>Name of the file when none is given.</summary>
    /// <param name="planPath">The plan file.</param>
    /// <param name="kind">The picture.</param>
    public static string NameFor(string planPath, PictureKind kind) =>
        $"{Path.GetFileNameWithoutExtension(planPath)}-{PictureNames.Of(kind)}{(kind == PictureKind.Animation ? ".webp" : ".png")}";

    /// <summary>Refuses an ending that the picture cannot be saved as.</summary>
    /// <param name="path">The file.</param>
    /// <param name="kind">The picture.</param>
    /// <exception cref="CommandException">When the ending does not fit.</exception>
    public static void Check(string path, PictureKind kind)
    {
        string ending = Path.GetExtension(path).ToLowerInvariant();
        string[] fitting = kind == PictureKind.Animation ? [".webp"] : [".png", ".svg"];
        if (!fitting.Contains(ending))
            throw new CommandException(ExitCodes.BadInput, $"-o {path}: this picture is saved as {string.Join(" or ", fitting)}; give the file such an ending.");
    }
}
