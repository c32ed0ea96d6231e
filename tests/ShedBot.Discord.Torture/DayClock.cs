namespace ShedBot.Discord.Torture;

/// <summary>A clock on which it is always shortly after six in the evening, of a day that can be moved on; and on which nobody waits half a minute.</summary>
internal sealed class DayClock : TimeProvider
{
    /// <summary>Waits as long as this or longer are the program's own rounds, not pauses that the platform asks for.</summary>
    private static readonly TimeSpan Round = TimeSpan.FromSeconds(30);

    private static readonly DateTimeOffset First = new(2026, 5, 3, 18, 0, 1, TimeSpan.Zero);
    private readonly long begun = System.GetTimestamp();
    private int day;

    /// <summary>Days since the first.</summary>
    public int Day
    {
        set => Volatile.Write(ref day, value);
    }

    /// <summary>The evening of a day.</summary>
    public static DateTimeOffset Evening(int day) => First.AddDays(day);

    public override DateTimeOffset GetUtcNow() => Evening(Volatile.Read(ref day)) + System.GetElapsedTime(begun);

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        period == Round ? System.CreateTimer(callback, state, dueTime / 300, period / 300) : System.CreateTimer(callback, state, dueTime, period);
}
