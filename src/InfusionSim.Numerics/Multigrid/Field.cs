using System.Runtime.CompilerServices;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>One number per cell, with its margin of zeros, at a fixed place in memory aligned to a line of the cache.</summary>
/// <typeparam name="T">float or double.</typeparam>
internal sealed unsafe class Field<T>
    where T : unmanaged
{
    private const int CacheLine = 64;

    private readonly T[] _memory;
    private readonly int _start;

    /// <summary>Makes a field of zeros.</summary>
    /// <param name="layout">Where the cells lie.</param>
    public Field(PaddedLayout layout)
    {
        Layout = layout;
        int slack = CacheLine / sizeof(T);
        _memory = GC.AllocateArray<T>(layout.Length + slack, pinned: true);
        nint address = (nint)Unsafe.AsPointer(ref _memory[0]);
        _start = (int)((CacheLine - address % CacheLine) % CacheLine / sizeof(T)) + layout.First;
        Origin = (T*)Unsafe.AsPointer(ref _memory[_start]);
    }

    /// <summary>Where the cells lie.</summary>
    public PaddedLayout Layout { get; }

    /// <summary>Address of cell (0, 0) of the lowest layer; valid as long as this field is.</summary>
    public T* Origin { get; }

    /// <summary>Address of the first cell of a row of the lowest layer.</summary>
    /// <param name="row">Row, the margin's included.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T* Row(int row) => Origin + (nint)row * Layout.Stride;

    /// <summary>Address of the first cell of a row.</summary>
    /// <param name="row">Row, the margin's included.</param>
    /// <param name="layer">Layer.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T* Row(int row, int layer) => Origin + (nint)layer * Layout.LayerStride + (nint)row * Layout.Stride;

    /// <summary>Sets every cell and the margin to zero.</summary>
    public void Clear() => Array.Clear(_memory);

    /// <summary>Copies a plain array [layers × rows × columns], x fastest, into the field.</summary>
    /// <param name="source">The array.</param>
    public void CopyFrom(ReadOnlySpan<T> source)
    {
        int columns = Layout.Columns;
        for (int line = 0; line < Layout.Layers * Layout.Rows; line++)
            source.Slice(line * columns, columns).CopyTo(new Span<T>(Row(line % Layout.Rows, line / Layout.Rows), columns));
    }

    /// <summary>Copies the field into a plain array [layers × rows × columns], x fastest.</summary>
    /// <param name="target">The array.</param>
    public void CopyTo(Span<T> target)
    {
        int columns = Layout.Columns;
        for (int line = 0; line < Layout.Layers * Layout.Rows; line++)
            new Span<T>(Row(line % Layout.Rows, line / Layout.Rows), columns).CopyTo(target.Slice(line * columns, columns));
    }
}
