using System.Globalization;
using System.Text.RegularExpressions;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Requests;

/// <summary>Finds every fault of a question about several resins: each card is checked as the resin of the plan and named by its own place.</summary>
public static partial class ResinsChecker
{
    private const string OwnResin = "resin";

    /// <summary>Checks a question.</summary>
    /// <param name="request">The question.</param>
    /// <param name="found">Faults that were met while it was read; they come first.</param>
    public static ResinsCheck Check(CompareResinsRequest request, IReadOnlyList<Fault>? found = null)
    {
        ArgumentNullException.ThrowIfNull(request);
        found ??= [];
        var faults = new FaultList();
        faults.AddRange(found);
        if (PlanChecker.IsUnread(found) || !HasCardsToCompare(request, faults)) return new ResinsCheck([], faults.ToList(), []);
        PlanCheck[] cards = [.. request.Cards.Select((card, index) => PlanChecker.Check(WithResin(request.Plan, card), FoundFor(index, found)))];
        var known = new HashSet<(string, string)>(found.Select(static fault => (fault.Path, fault.Text)));
        foreach ((int index, PlanCheck card) in cards.Index())
            foreach (Fault fault in card.Faults.Select(fault => Moved(fault, index)))
                if (known.Add((fault.Path, fault.Text))) faults.Add(fault.Path, fault.Text, fault.Reason);
        IEnumerable<string> warnings = cards.SelectMany(static (card, index) => card.Warnings.Select(warning => KeyOfResin().Replace(warning, PlaceOf(index) + ".")));
        return new ResinsCheck(cards, faults.ToList(), [.. warnings.Distinct()]);
    }

    /// <summary>The place of a card in the question.</summary>
    /// <param name="index">Which card, from 0 [-].</param>
    public static string PlaceOf(int index) => string.Create(CultureInfo.InvariantCulture, $"cards[{index}]");

    private static bool HasCardsToCompare(CompareResinsRequest request, FaultList faults)
    {
        int count = request.Cards.Count;
        if (count is >= 1 and <= RequestLimits.MostResins) return true;
        if (count == 0 && !faults.HasUnder("cards")) faults.Add("cards", $"cards is empty: there is no resin to compare; give 1 to {RequestLimits.MostResins}.");
        if (count > 0) faults.Add("cards", $"cards names {Numbers.Count(count)} resins; at most {RequestLimits.MostResins} are compared at once.", ErrorReason.TooLarge);
        return false;
    }

    private static InfusionPlan? WithResin(InfusionPlan? plan, Resin card)
    {
        if (plan is null) return null;
        InfusionPlan filled = plan.Clone();
        filled.Resin = card.Clone();
        if (!card.HasMixToOpenMin && plan.Resin is { HasMixToOpenMin: true } own) filled.Resin.MixToOpenMin = own.MixToOpenMin;
        return filled;
    }

    // What could not be read of this card stands where the plan has its resin; what belongs to other cards does not concern it.
    private static IReadOnlyList<Fault> FoundFor(int index, IReadOnlyList<Fault> found)
    {
        string place = PlaceOf(index);
        return
        [
            .. found.Where(fault => !IsUnder(fault.Path, OwnResin) && (IsUnder(fault.Path, place) || !fault.Path.StartsWith("cards", StringComparison.Ordinal)))
                .Select(fault => IsUnder(fault.Path, place) ? fault with { Path = OwnResin + fault.Path[place.Length..] } : fault),
        ];
    }

    private static Fault Moved(Fault fault, int index) => fault with
    {
        Path = IsUnder(fault.Path, OwnResin) ? PlaceOf(index) + fault.Path[OwnResin.Length..] : fault.Path,
        Text = KeyOfResin().Replace(fault.Text, PlaceOf(index) + "."),
    };

    private static bool IsUnder(string path, string place) =>
        path.StartsWith(place, StringComparison.Ordinal) && (path.Length == place.Length || path[place.Length] is '.' or '[');

    [GeneratedRegex(@"\bresin\.(?=[a-z])")]
    private static partial Regex KeyOfResin();
}
