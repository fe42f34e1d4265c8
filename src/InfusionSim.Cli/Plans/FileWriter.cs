using InfusionSim.Cli.Commands;

namespace InfusionSim.Cli.Plans;

/// <summary>Writes files, and says in words when it cannot.</summary>
public static class FileWriter
{
    /// <summary>Writes a text file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="text">What to write.</param>
    public static void Write(string path, string text) => Try(path, () => File.WriteAllText(path, text));

    /// <summary>Does what writes a file; its folder is made first.</summary>
    /// <param name="path">The file.</param>
    /// <param name="write">Writes it.</param>
    /// <exception cref="CommandException">When it cannot be written.</exception>
    public static void Try(string path, Action write)
    {
        ArgumentNullException.ThrowIfNull(write);
        try
        {
            if (Path.GetDirectoryName(Path.GetFullPath(path)) is string folder) Directory.CreateDirectory(folder);
            write();
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new CommandException(ExitCodes.BadInput, $"{path} cannot be written: {exception.Message}");
        }
    }
}
