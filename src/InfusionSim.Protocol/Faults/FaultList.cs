using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Faults;

/// <summary>Gathers the faults of one request, so that all of them are answered at once.</summary>
/// <remarks>Only so many are kept: a file of another kind would otherwise answer with a page for each of its lines.</remarks>
public sealed class FaultList
{
    /// <summary>Faults that are kept [-]; of the rest only the number is told.</summary>
    public const int MostKept = 100;

    private const int LongestText = 800, LongestPath = 200;

    private readonly List<Fault> _faults = [];
    private readonly HashSet<string> _paths = new(StringComparer.Ordinal);
    private int _leftOut;

    /// <summary>Whether there is none.</summary>
    public bool IsEmpty => _faults.Count == 0;

    /// <summary>Adds a fault.</summary>
    /// <param name="path">Where it stands.</param>
    /// <param name="text">What, value, range, what to do.</param>
    /// <param name="reason">Why it is refused.</param>
    public void Add(string path, string text, ErrorReason reason = ErrorReason.PlanInvalid)
    {
        _paths.Add(path);
        if (_faults.Count < MostKept) _faults.Add(new Fault(PlainText.Of(path, LongestPath), PlainText.Of(text, LongestText), reason));
        else _leftOut++;
    }

    /// <summary>Adds faults found elsewhere.</summary>
    /// <param name="faults">The faults.</param>
    public void AddRange(IEnumerable<Fault> faults)
    {
        ArgumentNullException.ThrowIfNull(faults);
        foreach (Fault fault in faults) Add(fault.Path, fault.Text, fault.Reason);
    }

    /// <summary>Whether a fault stands at a path already, so that no second one need follow from it.</summary>
    /// <param name="path">The path.</param>
    public bool HasAt(string path) => _paths.Contains(path);

    /// <summary>Whether a fault stands at a path or anywhere below it.</summary>
    /// <param name="path">The path.</param>
    public bool HasUnder(string path) =>
        _paths.Any(known => known.StartsWith(path, StringComparison.Ordinal)
            && (known.Length == path.Length || known[path.Length] is '.' or '['));

    /// <summary>The faults in the order they were found, with a last one that tells how many more there are.</summary>
    public IReadOnlyList<Fault> ToList() =>
        _leftOut == 0
            ? [.. _faults]
            : [.. _faults, new Fault("", $"There are {_leftOut} more faults; put these right first.", _faults[0].Reason)];
}
