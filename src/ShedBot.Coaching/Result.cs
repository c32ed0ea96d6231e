namespace ShedBot.Coaching;

/// <summary>Why something that was asked for is not done.</summary>
/// <param name="Code">Stable, for logs and tests.</param>
/// <param name="Say">One or two sentences for the reader.</param>
public sealed record Refusal(string Code, string Say);

/// <summary>A value, or why there is none. <c>default</c> holds neither and is never handed out.</summary>
public readonly record struct Result<T>
    where T : class
{
    private Result(T? value, Refusal? refused) => (Value, Refused) = (value, refused);

    /// <summary>Null when it was refused.</summary>
    public T? Value { get; }

    /// <summary>Null when there is a value.</summary>
    public Refusal? Refused { get; }

    /// <exception cref="InvalidOperationException">It was refused.</exception>
    public T Must => Value ?? throw new InvalidOperationException(Refused?.Say);

    public static implicit operator Result<T>(T value) => new(value, null);

    public static implicit operator Result<T>(Refusal refused) => new(null, refused);
}
