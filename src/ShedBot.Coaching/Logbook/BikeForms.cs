using NodaTime;
using ShedBot.Coaching.Riding;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Logbook;

/// <summary>Requests from fields that are filled in one by one, each as its writer likes to write it.</summary>
public static class BikeForms
{
    /// <param name="distance">As in "12 km"; a number alone is in the rider's units. Null or empty: not told.</param>
    /// <param name="time">As in "40 min"; a number alone is minutes.</param>
    /// <param name="weather">dry, wet or dusty; null: dry.</param>
    /// <param name="day">Null: today.</param>
    public static Result<BikeRequest> Ride(string? distance, string? time, string? weather, string? day, Speaker speaker, DateTimeOffset at)
    {
        var amounts = Both(distance, time, speaker);
        if (amounts.Refused is { } wrong) return wrong;
        Weather? told = string.IsNullOrWhiteSpace(weather) ? Weather.Dry : BikeWords.WeatherOf(weather.Trim().ToLowerInvariant());
        if (told is not { } was) return new Refusal("weather", "The weather is dry, wet or dusty.");
        return On(day, speaker, at, on => new RideEntry(new RiddenDay(on, amounts.Kilometres, amounts.Hours, was)));
    }

    /// <param name="until">The first day of riding again; null or empty while nobody knows.</param>
    public static Result<BikeRequest> Rest(string? until, Speaker speaker, DateTimeOffset at)
    {
        if (string.IsNullOrWhiteSpace(until)) return (BikeRequest)new RestEntry(null);
        var read = DayWords.Whole(until, speaker.DayOf(at), coming: true);
        if (read.Refused is { } wrong) return wrong;
        return (BikeRequest)new RestEntry(read.Day);
    }

    /// <param name="days">Riding days a week, as a number.</param>
    public static Result<BikeRequest> Pace(string days, string? distance, string? time, Speaker speaker)
    {
        var number = Reader.Number(days.Trim());
        if (number is not { } each) return new Refusal("pace-words", "Days a week are a number above 0 and at most 7, such as 4 or 2.5.");
        var amounts = Both(distance, time, speaker);
        if (amounts.Refused is { } wrong) return wrong;
        return (BikeRequest)new PaceEntry(each, amounts.Kilometres, amounts.Hours);
    }

    /// <param name="task">Its id, what it is called, or words that occur in no other.</param>
    /// <param name="day">Null: today.</param>
    public static Result<BikeRequest> Done(string task, string? day, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at)
    {
        var found = TaskWords.Find(knowledge, task);
        if (found.Refused is { } unclear) return unclear;
        return On(day, speaker, at, on => new DoneEntry(found.Must.Id, on));
    }

    public static Result<BikeRequest> How(string task, KnowledgeBase knowledge)
    {
        var found = TaskWords.Find(knowledge, task);
        if (found.Refused is { } unclear) return unclear;
        return (BikeRequest)new ShowHow(found.Must.Id);
    }

    /// <param name="look">dark or light; null or empty: dark.</param>
    public static Result<BikeRequest> Timeline(string? look) => look?.Trim().ToLowerInvariant() switch
    {
        null or "" or "dark" => (BikeRequest)new ShowTimeline(PictureLook.Dark),
        "light" => (BikeRequest)new ShowTimeline(PictureLook.Light),
        _ => new Refusal("look", "The picture is dark or light."),
    };

    public static Result<BikeRequest> Fitted(string day, Speaker speaker, DateTimeOffset at) => On(day, speaker, at, on => new FittedEntry(on));

    private static Result<BikeRequest> On(string? day, Speaker speaker, DateTimeOffset at, Func<LocalDate, BikeRequest> request)
    {
        var read = string.IsNullOrWhiteSpace(day) ? new DayRead(speaker.DayOf(at)) : DayWords.Whole(day, speaker.DayOf(at), coming: false);
        if (read.Refused is { } wrong) return wrong;
        return request(read.Day);
    }

    private static AmountRead Both(string? distance, string? time, Speaker speaker)
    {
        var far = string.IsNullOrWhiteSpace(distance) ? null : AmountWords.Distance(distance, speaker.Units);
        var lasting = string.IsNullOrWhiteSpace(time) ? null : AmountWords.Time(time);
        return new(far?.Kilometres, lasting?.Hours, far?.Refused ?? lasting?.Refused);
    }
}
