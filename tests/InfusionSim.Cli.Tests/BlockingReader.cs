namespace InfusionSim.Cli.Tests;

/// <summary>A keyboard on which nobody presses a key: a read from it waits, as that of a terminal does, whatever is cancelled.</summary>
/// <param name="asked">Called when a line is waited for.</param>
internal sealed class BlockingReader(Action asked) : TextReader
{
    private readonly ManualResetEventSlim _released = new();

    public bool WasAsked { get; private set; }

    public override string? ReadLine()
    {
        WasAsked = true;
        asked();
        _released.Wait();
        return null;
    }

    // The wait is ended, not the event taken away under it: the read may still be on its way out.
    protected override void Dispose(bool disposing)
    {
        _released.Set();
        base.Dispose(disposing);
    }
}
