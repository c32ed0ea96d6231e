namespace ShedBot.Discord.Wire;

internal static class ComponentTypes
{
    public const int Row = 1, Button = 2, StringSelect = 3, TextInput = 4, Text = 10,
        MediaGallery = 12, Separator = 14, Container = 17, Label = 18, File = 13;
}

internal static class ButtonStyles
{
    public const int Primary = 1, Secondary = 2, Danger = 4;
}

/// <summary>A part of a message or of a form; which fields are set follows from the type. Names are the platform's.</summary>
/// <param name="Id">A number of our own choosing, unique in its message; the platform gives it back.</param>
internal sealed record Component(
    int Type,
    int? Id = null,
    string? CustomId = null,
    int? Style = null,
    string? Label = null,
    string? Description = null,
    string? Content = null,
    string? Url = null,
    bool? Disabled = null,
    string? Placeholder = null,
    int? MinValues = null,
    int? MaxValues = null,
    int? MinLength = null,
    int? MaxLength = null,
    bool? Required = null,
    string? Value = null,
    IReadOnlyList<string>? Values = null,
    IReadOnlyList<SelectOption>? Options = null,
    IReadOnlyList<int>? ChannelTypes = null,
    int? AccentColor = null,
    bool? Divider = null,
    int? Spacing = null,
    IReadOnlyList<GalleryItem>? Items = null,
    IReadOnlyList<Component>? Components = null,
    MediaReference? File = null,
    [property: System.Text.Json.Serialization.JsonPropertyName("component")] Component? Inner = null);

internal sealed record SelectOption(string Label, string Value, string? Description = null, bool? Default = null);

internal sealed record GalleryItem(MediaReference Media, string? Description = null);

internal sealed record MediaReference(string Url);
