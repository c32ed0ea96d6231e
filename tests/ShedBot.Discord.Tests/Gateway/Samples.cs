namespace ShedBot.Discord.Tests.Gateway;

/// <summary>Events as the platform's public description draws them, with ids and words made up.</summary>
internal static class Samples
{
    /// <summary>A message of some 700 bytes in a club, of somebody who speaks to nobody in particular.</summary>
    public const string Chat = """
        {"type":0,"tts":false,"timestamp":"2026-03-01T12:00:00.000000+00:00","pinned":false,"nonce":"1478000000000000001","mentions":[],"mention_roles":[],
        "mention_everyone":false,"member":{"roles":["71","72"],"premium_since":null,"pending":false,"nick":null,"mute":false,
        "joined_at":"2025-01-01T10:00:00.000000+00:00","flags":0,"deaf":false,"communication_disabled_until":null,"avatar":null},"id":"1478000000000000002",
        "flags":0,"embeds":[],"edited_timestamp":null,"content":"","components":[],"channel_type":0,"channel_id":"80","author":{"username":"a_made_up_rider",
        "public_flags":0,"id":"555","global_name":"A made-up rider","discriminator":"0","avatar":null},"attachments":[],"guild_id":"70"}
        """;

    /// <summary>A reply that calls us: who is replied to stands among the mentions.</summary>
    public const string Reply = """
        {"id":"202","channel_id":"80","guild_id":"70","type":19,"content":"it \"drags\" \u00e9","author":{"id":"555","username":"r"},
        "mentions":[{"id":"556"},{"id":"900","bot":true}],"message_reference":{"type":0,"message_id":"201","channel_id":"80","guild_id":"70"},
        "referenced_message":{"id":"201","channel_id":"80","author":{"id":"900","bot":true},"content":"Which one?","mentions":[{"id":"555"}]}}
        """;

    public const string Press = """
        {"version":1,"type":3,"token":"made-up-token","message":{"type":0,"id":"201","channel_id":"80","flags":32768,"components":[],"nonce":7},
        "member":{"user":{"username":"r","id":"555","global_name":null},"roles":["71"],"permissions":"562949953601536","nick":null},"locale":"en-GB",
        "id":"300","guild_locale":"en-GB","guild_id":"70","entitlements":[],"data":{"custom_id":"sb1:x","component_type":2,"id":3},
        "context":0,"channel_id":"80","channel":{"id":"80","type":11,"parent_id":"79","name":"n"},"authorizing_integration_owners":{"0":"70"},
        "attachment_size_limit":10485760,"application_id":"901","app_permissions":"2251799813685247"}
        """;

    public const string Thread = """
        {"id":"81","guild_id":"70","parent_id":"80","owner_id":"900","type":11,"name":"Clutch drags","flags":0,
        "thread_metadata":{"archived":true,"locked":false,"auto_archive_duration":1440,"archive_timestamp":"2026-03-01T12:00:00+00:00"},"applied_tags":[]}
        """;

    public const string Guild = """
        {"id":"70","name":"Two-stroke Wheelers (invented)","owner_id":"555","preferred_locale":"en-GB","unavailable":false,"member_count":3,
        "joined_at":"2026-03-01T12:00:00+00:00","roles":[{"id":"70","name":"@everyone","permissions":"0"}],
        "channels":[{"id":"80","type":0,"name":"help","parent_id":null,"permission_overwrites":[{"id":"70","type":0,"allow":"0","deny":"0"}]}],
        "threads":[],"emojis":[],"members":[]}
        """;

    public static (string Name, string Data)[] All { get; } =
    [
        ("MESSAGE_CREATE", Chat), ("MESSAGE_CREATE", Reply), ("INTERACTION_CREATE", Press), ("THREAD_CREATE", Thread), ("THREAD_UPDATE", Thread),
        ("GUILD_CREATE", Guild), ("GUILD_DELETE", """{"id":"70","unavailable":true}"""), ("GUILD_DELETE", """{"id":"70"}"""),
        ("THREAD_DELETE", """{"id":"81","guild_id":"70","parent_id":"80","type":11}"""), ("CHANNEL_DELETE", """{"id":"80","guild_id":"70","type":0}"""),
        ("MESSAGE_DELETE", """{"id":"201","channel_id":"80","guild_id":"70"}"""),
        ("MESSAGE_DELETE_BULK", """{"ids":["201","202"],"channel_id":"80","guild_id":"70"}"""),
        ("TYPING_START", """{"user_id":"555"}"""), ("A_NEW_EVENT", """[1,{"a":null}]"""),
    ];

    public static string Frame(int sample, long sequence) =>
        $$"""{"t":"{{All[sample].Name}}","s":{{sequence}},"op":0,"d":{{All[sample].Data}}}""";
}
