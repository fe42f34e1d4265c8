using InfusionSim.Cli.Answers;
using InfusionSim.Cli.Terminal;

namespace InfusionSim.Cli.Demo;

/// <summary>Tells the story of the demonstration.</summary>
public static class DemoText
{
    /// <summary>What the panel is.</summary>
    /// <param name="screen">Where to write.</param>
    public static void Introduce(Screen screen)
    {
        ArgumentNullException.ThrowIfNull(screen);
        screen.Answer("A sled deck, 1.2 m x 0.45 m: 3 mm of open cloth, 6 mm of dense cloth at the right end round a hand hold.");
        screen.Output.WriteLine("The same cloth, resin and vacuum twice; only the lines move.");
    }

    /// <summary>One of the two line plans with its answer.</summary>
    /// <param name="screen">Where to write.</param>
    /// <param name="heading">What the line plan is.</param>
    /// <param name="answer">Its answer.</param>
    public static void Tell(Screen screen, string heading, PlanAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(screen);
        ArgumentNullException.ThrowIfNull(answer);
        screen.Output.WriteLine();
        screen.Output.WriteLine(heading);
        AnswerPrinter.Print(screen, answer, withNext: false);
    }

    /// <summary>What the second line plan does differently.</summary>
    /// <param name="screen">Where to write.</param>
    /// <param name="first">The first answer.</param>
    /// <param name="second">The second answer.</param>
    public static void Compare(Screen screen, PlanAnswer first, PlanAnswer second)
    {
        ArgumentNullException.ThrowIfNull(screen);
        screen.Output.WriteLine();
        screen.Output.WriteLine("WHAT THE SECOND LINE PLAN CHANGES");
        foreach (string line in Comparison.Difference(first, second)) screen.Answer($"  {line}");
    }
}
