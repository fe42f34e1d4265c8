using InfusionSim.Cli.Commands;
using InfusionSim.Cli.Settings;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using Path = System.IO.Path;

namespace InfusionSim.Cli.Plans;

/// <summary>Reads a plan from its file, with the changes typed behind it.</summary>
public static class PlanFile
{
    private const long MostBytes = 16 << 20;

    private static readonly string[] OfTheAir = ["shop.altitudeM=", "bag.ambientMbarAbs="];

    /// <summary>Reads a plan.</summary>
    /// <param name="path">The file.</param>
    /// <param name="settings">Changes as typed: KEY=VALUE.</param>
    /// <param name="understood">Told what was made of each change.</param>
    /// <exception cref="CommandException">When there is no such file, or it cannot be read, or a change cannot be understood.</exception>
    public static InfusionPlan Read(string path, IReadOnlyList<string> settings, TextWriter understood)
    {
        JsonReading<InfusionPlan> reading = PlanJson.Read(ReadBytes(path, $"`infusionsim new plate 600x400 -o {path}` writes one."));
        if (reading.Faults.Count > 0) throw Refuse(path, PlanChecker.Check(reading.Message, reading.Faults).Faults);
        Change(reading.Message, settings, understood);
        return reading.Message;
    }

    /// <summary>Changes a plan as typed.</summary>
    /// <param name="plan">The plan; changed in place.</param>
    /// <param name="settings">Changes as typed: KEY=VALUE.</param>
    /// <param name="understood">Told what was made of each change.</param>
    /// <exception cref="CommandException">When a change cannot be understood.</exception>
    public static void Change(InfusionPlan plan, IReadOnlyList<string> settings, TextWriter understood)
    {
        if (settings.Count == 0) return;
        PlanNames.FillIn(plan);
        List<string> faults = [];
        // A gauge counts from the air of the shop, so that is set first wherever it was typed.
        foreach (string typed in settings.OrderBy(WhenSet))
        {
            try
            {
                understood.WriteLine($"Set      {PlanSetter.Set(plan, Setting.Parse(typed))}");
            }
            catch (FormatException exception)
            {
                faults.Add($"--set {typed}: {exception.Message}");
            }
        }

        if (faults.Count > 0) throw new CommandException(ExitCodes.BadInput, faults);
    }

    /// <summary>Says every fault of a plan, the count first.</summary>
    /// <param name="path">The file that holds the plan.</param>
    /// <param name="faults">The faults.</param>
    public static CommandException Refuse(string path, IReadOnlyList<Fault> faults)
    {
        ArgumentNullException.ThrowIfNull(faults);
        string count = faults.Count == 1 ? "one thing to put right" : $"{faults.Count} things to put right";
        return new CommandException(ExitCodes.BadInput, [$"{path}: {count}", .. faults.Select(Say)]);
    }

    private static int WhenSet(string typed)
    {
        int place = Array.FindIndex(OfTheAir, key => typed.StartsWith(key, StringComparison.Ordinal));
        return place < 0 ? OfTheAir.Length : place;
    }

    private static string Say(Fault fault) =>
        fault.Path.Length == 0 || fault.Text.Contains(fault.Path, StringComparison.Ordinal) ? $"  {fault.Text}" : $"  {fault.Path}: {fault.Text}";

    /// <summary>The bytes of a file that somebody named.</summary>
    /// <param name="path">The file.</param>
    /// <param name="advice">What to do when there is no such file and none like it.</param>
    /// <exception cref="CommandException">When there is no such file, or it cannot be read.</exception>
    internal static ReadOnlyMemory<byte> ReadBytes(string path, string advice)
    {
        try
        {
            FileInfo file = new(path);
            if (!file.Exists) throw new CommandException(ExitCodes.BadInput, Missing(path, advice));
            if (file.Length > MostBytes) throw new CommandException(ExitCodes.BadInput, $"{path} holds {file.Length >> 20} MB; such a file is far smaller. Is it the right file?");
            return File.ReadAllBytes(path);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new CommandException(ExitCodes.BadInput, $"{path} cannot be read: {exception.Message}");
        }
    }

    private static string Missing(string path, string advice)
    {
        if (Directory.Exists(path)) return $"{path} is a folder; name a file in it.";
        string folder = Path.GetDirectoryName(Path.GetFullPath(path)) ?? ".";
        if (!Directory.Exists(folder)) return $"there is no folder {folder}.";
        // The ending is the same for all and makes no file like another.
        string ending = Path.GetExtension(path);
        string? nearest = NearestKey.Of(Path.GetFileNameWithoutExtension(path), Directory.EnumerateFiles(folder, "*" + ending).Take(200).Select(Path.GetFileNameWithoutExtension).OfType<string>());
        return nearest is null
            ? $"there is no file {path}. {advice}"
            : $"there is no file {path}. Did you mean {Path.Combine(Path.GetDirectoryName(path) ?? "", nearest + ending)}?";
    }
}
