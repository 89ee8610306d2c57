using CsCheck;
using ZstdSharp;

namespace WeldTrace.ProcessLogs.Tests;

public sealed class ChannelCodecTests
{
    [Fact]
    public void Decode_AnyWholeNumbers_GivesThemBack() =>
        Gen.Select(Gen.Int.Array[0, 3000], Gen.Int[0, 9])
            .Sample(
                (codes, decimals) =>
                {
                    using var codec = new ChannelCodec();
                    var zeros = codes
                        .Select((code, i) => (code, i))
                        .Where(pair => pair.code % 5 == 0)
                        .Select(pair => pair.i)
                        .ToArray();
                    var block = Decode(codec, codec.Encode(codes, decimals, zeros));

                    Assert.Equal(
                        (codes.Length, decimals, true),
                        (block.Count, block.Decimals, block.IsFixedDecimal)
                    );
                    Assert.Equal(codes, block.Codes.ToArray());
                    Assert.Equal(zeros, block.NegativeZeros.ToArray());
                }
            );

    [Theory]
    [InlineData(0)]
    [InlineData(int.MinValue)]
    [InlineData(int.MaxValue)]
    public void Decode_SawtoothOfExtremes_GivesThemBack(int other)
    {
        using var codec = new ChannelCodec();
        int[] codes =
        [
            .. Enumerable.Range(0, 16_384).Select(i => i % 2 == 0 ? int.MinValue : other),
        ];
        Assert.Equal(codes, Decode(codec, codec.Encode(codes, 0)).Codes.ToArray());
    }

    /// <summary>What is stored can be read without this program, one number after another, as the layout says.</summary>
    [Fact]
    public void Encode_AnySignal_CanBeReadNumberByNumberAndGivenBack() =>
        Gen.Select(Gen.Int[-9, 9].Array[0, 3000], Gen.Int[0, 2], Gen.Int)
            .Sample(
                (noise, order, start) =>
                {
                    using var codec = new ChannelCodec();
                    int[] codes = [.. noise];
                    for (var i = 0; i < order; i++)
                    {
                        // The sums wrap around, as do those of samples at the ends of their range.
                        var sum = start;
                        codes = [.. codes.Select(step => sum = unchecked(sum + step))];
                    }

                    var bytes = codec.Encode(codes, 2);

                    Assert.Equal(codes, ReadNumberByNumber(bytes));
                    Assert.Equal(codes, Decode(codec, bytes).Codes.ToArray());
                }
            );

    [Fact]
    public void Decode_AnyFloatingPoint_GivesTheSameBits() =>
        Gen
            .Double.Array[0, 2000]
            .Sample(values =>
            {
                using var codec = new ChannelCodec();
                var block = Decode(codec, codec.Encode(values));

                Assert.False(block.IsFixedDecimal);
                Assert.Equal(
                    values.Select(BitConverter.DoubleToInt64Bits),
                    block.FloatValues.ToArray().Select(BitConverter.DoubleToInt64Bits)
                );
            });

    [Fact]
    public void Encode_SmoothSignal_NeedsLittle()
    {
        using var codec = new ChannelCodec();
        int[] ramp = [.. Enumerable.Range(0, 16_384).Select(i => i * 5)];
        Assert.InRange(codec.Encode(ramp, 3).Length, 1, 100);
    }

    [Fact]
    public void Decode_AnyDamage_ThrowsOrGivesASaneBlock() =>
        Gen.Select(Gen.Int[0, 400], Gen.Byte, Gen.Int[0, 400])
            .Sample(
                (place, value, length) =>
                {
                    using var codec = new ChannelCodec();
                    var bytes = codec.Encode(
                        [.. Enumerable.Range(0, 500).Select(i => i * i % 1013)],
                        2
                    );
                    bytes[place % bytes.Length] ^= value;
                    var cut = bytes.AsSpan(0, bytes.Length - (length % 3));
                    try
                    {
                        var block = new SampleBlock();
                        codec.Decode(cut, block);
                        Assert.InRange(block.Count, 0, ChannelCodec.MostSamples);
                    }
                    catch (InvalidDataException damage)
                    {
                        Assert.NotEmpty(damage.Message);
                    }
                },
                iter: 2000
            );

    private static int[] ReadNumberByNumber(byte[] bytes)
    {
        var count = BitConverter.ToInt32(bytes, 4);
        using var zstd = new Decompressor();
        var planes = zstd.Unwrap(bytes.AsSpan(12)).ToArray();
        var numbers = new int[count];
        for (var i = 0; i < count; i++)
        {
            var step =
                planes[i]
                | (planes[count + i] << 8)
                | (planes[(2 * count) + i] << 16)
                | (planes[(3 * count) + i] << 24);
            numbers[i] = (int)((uint)step >> 1) ^ -(step & 1);
        }

        for (var order = bytes[3]; order > 0; order--)
        {
            for (var i = 1; i < count; i++)
            {
                numbers[i] = unchecked(numbers[i] + numbers[i - 1]);
            }
        }

        return numbers;
    }

    private static SampleBlock Decode(ChannelCodec codec, byte[] bytes)
    {
        var block = new SampleBlock();
        codec.Decode(bytes, block);
        return block;
    }
}
