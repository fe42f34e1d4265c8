using InfusionSim.Cli.Commands;

namespace InfusionSim.Cli.Plans;

/// <summary>Reads several files and says what is wrong with all of them at once.</summary>
public static class Gathering
{
    /// <summary>Reads each file.</summary>
    /// <typeparam name="T">What a file holds.</typeparam>
    /// <param name="paths">The files.</param>
    /// <param name="read">Reads one; told the file and its place in the row, from 0.</param>
    /// <exception cref="CommandException">When one or more cannot be read: all lines of all of them.</exception>
    public static T[] All<T>(IReadOnlyList<string> paths, Func<string, int, T> read)
    {
        ArgumentNullException.ThrowIfNull(paths);
        ArgumentNullException.ThrowIfNull(read);
        List<T> found = [];
        List<string> faults = [];
        for (int k = 0; k < paths.Count; k++)
        {
            try
            {
                found.Add(read(paths[k], k));
            }
            catch (CommandException refused) when (refused.ExitCode == ExitCodes.BadInput)
            {
                faults.AddRange(refused.Lines);
            }
        }

        return faults.Count == 0 ? [.. found] : throw new CommandException(ExitCodes.BadInput, faults);
    }
}
