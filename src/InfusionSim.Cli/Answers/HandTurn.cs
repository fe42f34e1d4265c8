using System.Globalization;
using Google.Protobuf.Collections;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Answers;

/// <summary>A clamp that is turned by hand while a fill is watched.</summary>
/// <param name="Line">Name of the feed or vent.</param>
/// <param name="OpenFraction">How far open it is from then on, 0 shut to 1 open.</param>
public sealed record HandTurn(string Line, double OpenFraction)
{
    /// <summary>What may be typed.</summary>
    public const string Help = "Enter for the next moment, open F2, open F2 0.3, shut V1, stop";

    /// <summary>What was done: "F2 opened", "V1 shut", "F1 opened to 0.3".</summary>
    public string Words => OpenFraction switch
    {
        0 => $"{Line} shut",
        1 => $"{Line} opened",
        _ => $"{Line} opened to {Numbers.Say(OpenFraction)}",
    };

    /// <summary>Reads what was typed.</summary>
    /// <param name="typed">What was typed: open F2, open F2 0.3, shut V1.</param>
    /// <param name="plan">The plan whose lines are meant.</param>
    /// <exception cref="FormatException">When it cannot be understood; the message says what can.</exception>
    public static HandTurn Read(string typed, InfusionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(plan);
        string[] words = typed.Split(' ', 3, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        bool opens = words.Length > 1 && words[0].Equals("open", StringComparison.OrdinalIgnoreCase);
        bool shuts = words.Length == 2 && words[0].Equals("shut", StringComparison.OrdinalIgnoreCase);
        if (!opens && !shuts) throw new FormatException($"'{typed}' is not understood. {Help}.");
        string line = LineOf(words[1], plan);
        if (shuts) return new HandTurn(line, 0);
        if (words.Length == 2) return new HandTurn(line, 1);
        return double.TryParse(words[2], NumberStyles.Float, CultureInfo.InvariantCulture, out double share) && share is > 0 and <= 1
            ? new HandTurn(line, share)
            : throw new FormatException($"'{words[2]}' is no share between 0 and 1. Write for example open {line} 0.3, or shut {line}.");
    }

    /// <summary>The plan with this turn in it; a turn of the same clamp at the same moment is replaced.</summary>
    /// <param name="plan">The plan; not changed.</param>
    /// <param name="atMin">When it is turned [min].</param>
    public InfusionPlan In(InfusionPlan plan, double atMin)
    {
        ArgumentNullException.ThrowIfNull(plan);
        InfusionPlan turned = plan.Clone();
        RepeatedField<ClampStep> steps = turned.Feeds.FirstOrDefault(feed => feed.Name == Line)?.ClampSteps
            ?? turned.Vents.First(vent => vent.Name == Line).ClampSteps;
        foreach (ClampStep same in steps.Where(step => step.When is { HasAtMin: true } when && when.AtMin == atMin).ToList()) steps.Remove(same);
        steps.Add(new ClampStep { When = new Moment { AtMin = atMin }, OpenFraction = OpenFraction });
        return turned;
    }

    private static string LineOf(string name, InfusionPlan plan)
    {
        string[] lines = [.. plan.Feeds.Select(static feed => feed.Name), .. plan.Vents.Select(static vent => vent.Name)];
        string? line = lines.FirstOrDefault(one => one == name) ?? lines.FirstOrDefault(one => one.Equals(name, StringComparison.OrdinalIgnoreCase));
        if (line is not null) return line;
        string hint = NearestKey.Of(name, lines) is string nearest ? $"Did you mean {nearest}?" : $"There are {string.Join(", ", lines)}.";
        throw new FormatException($"no feed or vent is called '{name}'. {hint}");
    }
}
