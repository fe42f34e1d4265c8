using System.CommandLine;

namespace InfusionSim.Cli.Commands;

/// <summary>Arguments and options that several commands have, each made anew for its command.</summary>
public static class CommandOptions
{
    /// <summary>A plan file.</summary>
    public static Argument<string> Plan() => new("PLAN") { Description = "Plan file to read." };

    /// <summary>Changes of the plan.</summary>
    public static Option<string[]> Set() => new("--set")
    {
        Description = "Change one value of the plan, with a unit if you like: resin.viscosityPaS=300mPa.s. May be given several times.",
        HelpName = "KEY=VALUE",
        Arity = ArgumentArity.OneOrMore,
        DefaultValueFactory = _ => [],
    };

    /// <summary>Another resin than the plan's.</summary>
    public static Option<string?> ResinCard() => new("--resin")
    {
        Description = "Resin card in place of the plan's resin; a .csv of minutes from mixing and viscosity takes the rest from the plan.",
        HelpName = "CARD",
    };

    /// <summary>Where the service listens.</summary>
    public static Option<string?> Server() => new("--server")
    {
        Description = "Address of a service that runs already; left out: compute here.",
        HelpName = "ADDRESS",
    };

    /// <summary>Whether to answer in JSON.</summary>
    public static Option<bool> Json() => new("--json") { Description = "Answer in JSON instead of words." };

    /// <summary>A file to write.</summary>
    /// <param name="description">What it will hold.</param>
    public static Option<string?> OutputFile(string description) => new("--output", "-o") { Description = description, HelpName = "FILE" };
}
