using System.Runtime.InteropServices;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>Room for two rows of a grid on the way between a grid and the next coarser one.</summary>
internal sealed unsafe class RowBuffer
{
    private readonly float[] _memory;

    /// <summary>Makes room for rows of up to a number of cells.</summary>
    /// <param name="paddedColumns">Cells in a row, rounded up to whole vectors.</param>
    public RowBuffer(int paddedColumns)
    {
        int length = paddedColumns + 4 * PaddedLayout.Lanes;
        _memory = GC.AllocateArray<float>(2 * length, pinned: true);
        Left = (float*)Marshal.UnsafeAddrOfPinnedArrayElement(_memory, PaddedLayout.Lanes);
        Right = Left + length;
    }

    /// <summary>What belongs to the coarse point on the left of each cell; may be read a vector to each side.</summary>
    public float* Left { get; }

    /// <summary>What belongs to the coarse point on the right of each cell.</summary>
    public float* Right { get; }
}
