namespace InfusionSim.Cli.Commands;

/// <summary>What the exit code of a command says.</summary>
public static class ExitCodes
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>Done, and the plan does not meet its goals.</summary>
    public const int GoalsNotMet = 1;

    /// <summary>What was typed or what stands in the plan cannot be used.</summary>
    public const int BadInput = 2;

    /// <summary>The service could not be reached or could not answer.</summary>
    public const int NoService = 3;
}
