namespace InfusionSim.Cli.Tests;

/// <summary>Plans of the gallery on squares large enough for a quick test.</summary>
internal static class SamplePlans
{
    /// <summary>An invented resin that is thin and gels soon.</summary>
    public const string QuickResin = """{ "viscosityPaS": 0.15, "gelTimeMin": 20, "densityKgPerM3": 1100 }""";

    /// <summary>An invented resin that is thicker and gels late.</summary>
    public const string CalmResin = """{ "viscosityPaS": 0.4, "gelTimeMin": 200, "mixToOpenMin": 10, "densityKgPerM3": 1150 }""";

    /// <summary>A panel under a flow mesh.</summary>
    public static string Mesh() => Coarse("hatch-cover-mesh", "\"cellMm\": 5, \"subLayers\": 4", "\"cellMm\": 20, \"subLayers\": 2");

    /// <summary>A panel with a feed line of a bore.</summary>
    public static string Line() => Coarse("sled-runner-line", "\"cellMm\": 10", "\"cellMm\": 50");

    /// <summary>A panel known by the weight of its cloth, with a resin whose pot gets warm.</summary>
    public static string Mix() => Coarse("sled-tray-mix", "\"cellMm\": 5, \"subLayers\": 3", "\"cellMm\": 50, \"subLayers\": 2");

    private static string Coarse(string name, string fine, string coarse)
    {
        string plan = RepositoryFiles.Text($"plots/gallery/plans/{name}.json");
        plan.ShouldContain(fine);
        return plan.Replace(fine, coarse, StringComparison.Ordinal);
    }
}
