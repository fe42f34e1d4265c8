namespace InfusionSim.Physics.Flow;

/// <summary>What a fill adds up to at one value of the clock.</summary>
/// <param name="Clock">Drive clock [-].</param>
/// <param name="FilledFraction">Share of the pore volume of laminate and core that is full [-].</param>
/// <param name="ResinIn">Volume in through all feeds [m³].</param>
/// <param name="ResinOut">Volume out through all vents [m³].</param>
/// <param name="MassBalanceError">Resin in, less resin out, less resin in the cells, over resin in [-].</param>
public readonly record struct FillTally(double Clock, double FilledFraction, double ResinIn, double ResinOut, double MassBalanceError);
