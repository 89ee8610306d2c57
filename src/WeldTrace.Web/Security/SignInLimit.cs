using System.Net;
using System.Net.Sockets;

namespace WeldTrace.Web.Security;

/// <summary>
/// How many wrong sign-ins one network address may send, whatever accounts they name: who tries one password on many accounts is held
/// up too. A right one does not count, since a whole workshop may share an address; nor does it clear the others.
/// </summary>
public sealed class SignInLimit(TimeProvider clock)
{
    public const int MostWrong = 30;

    private const int NetworkBytes = 8;

    /// <summary>How long a wrong sign-in counts.</summary>
    public static readonly TimeSpan Window = TimeSpan.FromMinutes(5);

    private readonly Lock _lock = new();
    private readonly Dictionary<IPAddress, List<DateTimeOffset>> _wrong = [];
    private DateTimeOffset _cleaned;

    /// <summary>Counts a try as wrong until it is known to be right, so that many at once are not let in together.</summary>
    /// <param name="address">Where it comes from; null when that is not known.</param>
    /// <returns>False when too many wrong ones came from there: nothing is counted, and nothing is to be tried.</returns>
    public bool TryEnter(IPAddress? address)
    {
        lock (_lock)
        {
            var now = clock.GetUtcNow();
            Clean(now);
            var network = NetworkOf(address);
            if (!_wrong.TryGetValue(network, out var tries))
            {
                _wrong[network] = tries = [];
            }

            tries.RemoveAll(at => now - at >= Window);
            if (tries.Count >= MostWrong)
            {
                return false;
            }

            tries.Add(now);
            return true;
        }
    }

    /// <summary>Takes back the last try that was let in from an address: it was right.</summary>
    public void WasRight(IPAddress? address)
    {
        lock (_lock)
        {
            if (_wrong.TryGetValue(NetworkOf(address), out var tries) && tries.Count > 0)
            {
                tries.RemoveAt(tries.Count - 1);
            }
        }
    }

    // Once in a while is enough to forget addresses that sent nothing since.
    private void Clean(DateTimeOffset now)
    {
        if (now - _cleaned < Window)
        {
            return;
        }

        _cleaned = now;
        foreach (var (network, tries) in _wrong)
        {
            if (tries.All(at => now - at >= Window))
            {
                _wrong.Remove(network);
            }
        }
    }

    // One subscriber has a whole /64 of IPv6 (RFC 6177), and would have a new address for each try.
    private static IPAddress NetworkOf(IPAddress? address)
    {
        if (address is null)
        {
            return IPAddress.None;
        }

        if (address.IsIPv4MappedToIPv6)
        {
            return address.MapToIPv4();
        }

        if (address.AddressFamily != AddressFamily.InterNetworkV6)
        {
            return address;
        }

        var bytes = address.GetAddressBytes();
        bytes.AsSpan(NetworkBytes).Clear();
        return new IPAddress(bytes);
    }
}
