using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Cli.Answers;

/// <summary>Prints one answer: its lines on the output, what is odd about the plan beside it.</summary>
public static class AnswerPrinter
{
    // The worst come first; more than a few are read by nobody, and --json has all.
    private const int MostFindings = 3;

    /// <summary>Prints an answer in words.</summary>
    /// <param name="screen">Where to.</param>
    /// <param name="answer">The answer.</param>
    /// <param name="withNext">Whether to name the command that comes next.</param>
    public static void Print(Screen screen, PlanAnswer answer, bool withNext = true)
    {
        ArgumentNullException.ThrowIfNull(screen);
        ArgumentNullException.ThrowIfNull(answer);
        PrintWarnings(screen, answer.Response);
        IReadOnlyList<FillLine> lines = answer.Lines(withNext: false);
        screen.Clear();
        string text = string.Join("\n", FillWords.Text(lines).Split('\n').SelectMany(line => TextWrap.Fold(line, screen.Width())));
        screen.Output.WriteLine(screen.ShowsColour ? Colour(answer) + text.Insert(lines[0].Label.Length, "\u001b[0m") : text);
        PrintUnder(screen, answer, "Goals", GoalVerdict.Missed(answer.Plan, answer.Forecast).Select(missed => $"not met: {missed}"));
        PrintUnder(screen, answer, "Why", answer.Forecast.Findings.Take(MostFindings).Select(finding => finding.Sentence));
        if (withNext) screen.Answer(FillWords.Text([.. answer.Lines()]).Split('\n')[^1]);
    }

    /// <summary>Prints what is odd about a plan.</summary>
    /// <param name="screen">Where to.</param>
    /// <param name="response">The answer.</param>
    public static void PrintWarnings(Screen screen, PredictFillResponse response)
    {
        ArgumentNullException.ThrowIfNull(screen);
        ArgumentNullException.ThrowIfNull(response);
        foreach (string warning in response.Warnings) screen.Tell($"Look     {warning}");
    }

    private static void PrintUnder(Screen screen, PlanAnswer answer, string label, IEnumerable<string> sentences)
    {
        foreach ((int k, string sentence) in sentences.Index())
            foreach (string line in TextWrap.Lines(k == 0 ? label : "", sentence, answer.LabelWidth, screen.Width())) screen.Output.WriteLine(line);
    }

    // Bold green, bold yellow, bold red; the word itself says it too.
    private static string Colour(PlanAnswer answer) => answer.MeetsGoals
        ? "\u001b[1;32m"
        : answer.Forecast.Outcome == Outcome.Fills ? "\u001b[1;33m" : "\u001b[1;31m";
}
