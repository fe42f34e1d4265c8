namespace InfusionSim.Physics.Clamps;

/// <summary>When someone acts during an infusion: at a minute, when resin shows somewhere, or when the panel is full.</summary>
public abstract record Moment
{
    private protected Moment() { }
}
