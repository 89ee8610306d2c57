using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Features.Trace.Histories;

/// <summary>The line of orders: made one after another, kept in the data folder, so that a restart loses none.</summary>
public sealed class HistoryOrders : IDisposable
{
    private readonly OrderFiles _files;
    private readonly TimeProvider _clock;
    private readonly Lock _change = new();
    private readonly SemaphoreSlim _placed = new(0);
    private readonly Dictionary<Guid, HistoryOrder> _orders = [];
    private CancellationTokenSource? _making;
    private Guid _made;

    public HistoryOrders(OrderFiles files, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(clock);
        (_files, _clock) = (files, clock);
        foreach (var order in files.Load())
        {
            var now = order.GoOn(files.IsThere(order), Now);
            _orders[order.Id] = now;
            if (now != order)
            {
                Put(now);
            }
        }
    }

    public HistoryOrder? Find(Guid id)
    {
        lock (_change)
        {
            return _orders.GetValueOrDefault(id);
        }
    }

    /// <summary>The orders that a person sees, newest first.</summary>
    public IReadOnlyList<HistoryOrder> SeenBy(Actor actor)
    {
        lock (_change)
        {
            return [.. _orders.Values.Where(o => o.IsSeenBy(actor)).OrderByDescending(o => o.Id)];
        }
    }

    /// <summary>How many orders are made before this one.</summary>
    public int Before(HistoryOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        lock (_change)
        {
            return _orders.Values.Count(o => o.IsUnfinished && o.Id.CompareTo(order.Id) < 0);
        }
    }

    /// <summary>Puts an order at the end of the line.</summary>
    /// <param name="title">What the vessels have in common.</param>
    /// <param name="serials">The vessels.</param>
    /// <param name="site">The site as this visitor reaches it.</param>
    /// <param name="actor">Who orders.</param>
    public Outcome<HistoryOrder> Place(
        string title,
        IReadOnlyList<string> serials,
        Uri site,
        Actor actor
    )
    {
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(actor);
        lock (_change)
        {
            if (OrderRules.Against(_orders.Values, serials, actor) is { } reason)
            {
                return reason;
            }

            var now = Now;
            var order = new HistoryOrder
            {
                Id = Guid.CreateVersion7(now),
                Title =
                    title.Length > CollectionContents.LongestTitle
                        ? title[..(CollectionContents.LongestTitle - 1)] + "…"
                        : title,
                Serials = [.. serials],
                OrderedById = actor.PersonId,
                OrderedBy = actor.PrintedName,
                OrderedAt = now,
                Site = site,
            };
            try
            {
                if (!_files.HasRoomFor(0))
                {
                    return OrderRules.NoRoom;
                }

                Put(order);
            }
            catch (IOException)
            {
                return OrderRules.NoRoom;
            }

            _placed.Release();
            return order;
        }
    }

    /// <summary>Ends an order that is not ready; what was made of it is deleted.</summary>
    public void Cancel(Guid id)
    {
        lock (_change)
        {
            if (_orders.GetValueOrDefault(id) is not { IsUnfinished: true } order)
            {
                return;
            }

            Put(order.End(OrderState.Cancelled, Now));
            if (order.State == OrderState.Waiting)
            {
                _files.DeleteFiles(order);
            }
            else if (_made == id)
            {
                _making?.Cancel();
            }
        }
    }

    /// <summary>Deletes the file of an order that is ready.</summary>
    public void Delete(Guid id)
    {
        lock (_change)
        {
            if (_orders.GetValueOrDefault(id) is { State: OrderState.Ready } order)
            {
                Put(order.End(OrderState.Deleted, Now));
                _files.DeleteFiles(order);
            }
        }
    }

    /// <summary>Deletes the files, and later the orders, whose time is over.</summary>
    public void DeleteOld()
    {
        lock (_change)
        {
            var now = Now;
            foreach (var order in _orders.Values.Where(o => o.KeptUntil < now).ToList())
            {
                if (order.State == OrderState.Ready)
                {
                    Delete(order.Id);
                }
                else
                {
                    _files.Forget(order);
                    _orders.Remove(order.Id);
                }
            }
        }
    }

    /// <summary>Waits until there may be an order to make, or a while.</summary>
    public Task WaitAsync(TimeSpan pause, CancellationToken cancellation) =>
        _placed.WaitAsync(pause, cancellation);

    /// <summary>Takes the first order of the line, if there is one.</summary>
    /// <param name="stopping">Ends the making with the program.</param>
    internal (HistoryOrder Order, CancellationToken Token)? Begin(CancellationToken stopping)
    {
        lock (_change)
        {
            var first = _orders.Values.Where(o => o.IsUnfinished).MinBy(o => o.Id);
            if (first is null)
            {
                return null;
            }

            var begun = first with
            {
                State = OrderState.Making,
                Done = 0,
                Attempts = first.Attempts + 1,
            };
            Put(begun);
            _making?.Dispose();
            _making = CancellationTokenSource.CreateLinkedTokenSource(stopping);
            _made = begun.Id;
            return (begun, _making.Token);
        }
    }

    /// <summary>Tells how far an order is. It is not written down: after a restart its making begins anew.</summary>
    internal void Report(Guid id, int done)
    {
        lock (_change)
        {
            if (_orders.GetValueOrDefault(id) is { State: OrderState.Making } order)
            {
                _orders[id] = order with { Done = done };
            }
        }
    }

    /// <summary>Offers a file that is whole under its name. False when the order was cancelled meanwhile.</summary>
    internal bool Offer(Guid id, long bytes, string sha256)
    {
        lock (_change)
        {
            if (_orders.GetValueOrDefault(id) is not { State: OrderState.Making } order)
            {
                return false;
            }

            Put(
                order.End(OrderState.Ready, Now) with
                {
                    Done = order.Serials.Count,
                    Bytes = bytes,
                    Sha256 = sha256,
                }
            );
            return true;
        }
    }

    /// <summary>Ends an order that could not be made, or was cancelled, and deletes what there is of it.</summary>
    internal void GiveUp(Guid id, string fault)
    {
        lock (_change)
        {
            var order = _orders[id];
            // Room first: on a full disk the state could not be written down otherwise.
            _files.DeleteFiles(order);
            if (order.State == OrderState.Making)
            {
                Put(order.End(OrderState.Failed, Now) with { Fault = fault });
            }
        }
    }

    /// <summary>The program ends in an orderly way: the order goes on after the next start, and this beginning does not count.</summary>
    internal void PutBack(Guid id)
    {
        lock (_change)
        {
            var order = _orders[id];
            _files.DeleteFiles(order);
            if (order.State == OrderState.Making)
            {
                Put(
                    order with
                    {
                        State = OrderState.Waiting,
                        Done = 0,
                        Attempts = order.Attempts - 1,
                    }
                );
            }
        }
    }

    public void Dispose()
    {
        _making?.Dispose();
        _placed.Dispose();
    }

    private DateTimeOffset Now => _clock.GetUtcNow();

    private void Put(HistoryOrder order)
    {
        _files.Save(order);
        _orders[order.Id] = order;
    }
}
