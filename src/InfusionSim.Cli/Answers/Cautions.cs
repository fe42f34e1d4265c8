namespace InfusionSim.Cli.Answers;

/// <summary>What must stand beside every prediction.</summary>
public static class Cautions
{
    /// <summary>The caution in one line.</summary>
    public const string Line =
        "Caution  An estimate, no promise. Data sheets, local rules and the supplier's gel-time and temperature margins come first.";
}
