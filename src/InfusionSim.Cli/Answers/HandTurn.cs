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
    /// <summary>What may be typed, in short, with lines of the plan: "Enter, open F2, shut V1, run, stop".</summary>
    /// <param name="plan">The plan whose lines are meant.</param>
    public static string Offer(InfusionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        string feed = plan.Feeds[^1].Name;
        return $"Enter, open {feed}, shut {(plan.Vents.Count > 0 ? plan.Vents[0].Name : feed)}, run, stop";
    }

    /// <summary>What may be typed, in a sentence.</summary>
    /// <param name="plan">The plan whose lines are meant.</param>
    public static string Help(InfusionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        string feed = plan.Feeds[^1].Name;
        string? throttled = plan.Feeds.Where(one => one.Hose is not null).Select(one => one.Name).Concat(plan.Vents.Where(one => one.Hose is not null).Select(one => one.Name)).FirstOrDefault();
        return $"Enter goes on to the next moment, open {feed} or shut {(plan.Vents.Count > 0 ? plan.Vents[0].Name : feed)} turns a clamp, "
            + (throttled is null ? "" : $"open {throttled} 30% leaves it open so far, ")
            + "run goes on to the end, stop leaves";
    }

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
        bool shuts = words.Length == 2 && (words[0].Equals("shut", StringComparison.OrdinalIgnoreCase) || words[0].Equals("close", StringComparison.OrdinalIgnoreCase));
        if (!opens && !shuts) throw new FormatException($"'{typed}' is not understood. {Help(plan)}.");
        string line = LineOf(words[1], plan);
        if (shuts) return new HandTurn(line, 0);
        if (words.Length == 2) return new HandTurn(line, 1);
        bool isPercent = words[2].EndsWith('%');
        string number = words[2].TrimEnd('%').TrimEnd();
        return double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out double typedShare) && (isPercent ? typedShare / 100 : typedShare) is > 0 and <= 1 and double share
            ? new HandTurn(line, share)
            : throw new FormatException($"'{words[2]}' is no share above 0 and up to 1 (100%). Write for example open {line} 0.3 or open {line} 30%, or shut {line}.");
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
        string[] near = [.. lines.Where(one => NearestKey.Of(name, [one]) is not null)];
        string hint = near.Length == 1 ? $"Did you mean {near[0]}?" : $"There {(lines.Length == 1 ? "is" : "are")} {string.Join(", ", lines)}.";
        throw new FormatException($"no feed or vent is called '{name}'. {hint}");
    }
}
