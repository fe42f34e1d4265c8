using InfusionSim.Gallery.Pictures;
using InfusionSim.Gallery.Shelves;

namespace InfusionSim.Gallery;

/// <summary>Remakes the gallery from real forecasts, or checks that the committed one is what they give.</summary>
public static class Program
{
    private const string Usage = "InfusionSim.Gallery [--check] [FOLDER]   FOLDER holds plans/*.json; left out: plots/gallery";

    /// <summary>Runs the program.</summary>
    /// <param name="arguments">--check compares instead of writing; one folder may follow.</param>
    /// <returns>0 done or all alike, 1 something differs, 2 bad input.</returns>
    public static async Task<int> Main(string[] arguments)
    {
        var isCheck = arguments.Contains("--check");
        string[] rest = [.. arguments.Where(argument => argument != "--check")];
        var folder = rest.Length == 1 ? rest[0] : Path.Combine("plots", "gallery");
        if (rest.Length > 1 || !Directory.Exists(Path.Combine(folder, "plans")))
        {
            await Console.Error.WriteLineAsync($"'{folder}' has no folder plans; start this at the top of the project. {Usage}");
            return 2;
        }

        var files = await Hanging.DrawAllAsync(Path.Combine(folder, "plans"));
        if (!isCheck)
        {
            Shelf.Write(folder, files);
            await Console.Out.WriteLineAsync($"{files.Count} files in {folder}");
            return 0;
        }

        var faults = Shelf.Compare(folder, files);
        foreach (var fault in faults)
        {
            await Console.Out.WriteLineAsync(fault);
        }

        await Console.Out.WriteLineAsync(faults.Count == 0 ? $"{files.Count} files are as the forecasts give them" : "run this without --check and look at what changed");
        return faults.Count == 0 ? 0 : 1;
    }
}
