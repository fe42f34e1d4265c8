namespace InfusionSim.Cli.Tests;

/// <summary>Files of the project that a test reads as a person would.</summary>
internal static class RepositoryFiles
{
    public static string Text(string path)
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
            if (File.Exists(Path.Combine(at.FullName, "InfusionSim.sln"))) return File.ReadAllText(Path.Combine(at.FullName, path)).ReplaceLineEndings("\n");
        throw new InvalidOperationException("InfusionSim.sln does not lie above the tests.");
    }
}
