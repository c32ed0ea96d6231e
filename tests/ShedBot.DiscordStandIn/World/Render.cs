using System.Text.Json.Nodes;

namespace ShedBot.DiscordStandIn.World;

/// <summary>The platform's JSON for people, roles and members, with every field the public clients insist on.</summary>
internal static class Render
{
    public static JsonObject User(Person p) => new()
    {
        ["id"] = p.Id.Text(),
        ["username"] = p.Name,
        ["discriminator"] = p.IsBot ? "0001" : "0",
        ["global_name"] = p.ShownName,
        ["avatar"] = null,
        ["avatar_decoration_data"] = null,
        ["collectibles"] = null,
        ["primary_guild"] = null,
        ["banner"] = null,
        ["accent_color"] = null,
        ["bot"] = p.IsBot,
        ["system"] = false,
        ["public_flags"] = 0,
        ["flags"] = 0,
    };

    /// <summary>Our own account, as only its owner sees it.</summary>
    public static JsonObject OwnUser(Person p)
    {
        var user = User(p);
        user["mfa_enabled"] = true;
        user["locale"] = "en-GB";
        user["verified"] = true;
        user["email"] = null;
        return user;
    }

    public static JsonObject MemberWithoutUser(Member m) => new()
    {
        ["avatar"] = null,
        ["banner"] = null,
        ["communication_disabled_until"] = null,
        ["flags"] = 0,
        ["joined_at"] = m.JoinedAt.Text(),
        ["nick"] = m.Nick,
        ["pending"] = false,
        ["premium_since"] = null,
        ["roles"] = Wire.ArrayOf(m.RoleIds),
    };

    public static JsonObject Member(Member m)
    {
        var member = MemberWithoutUser(m);
        member["mute"] = false;
        member["deaf"] = false;
        member["user"] = User(m.Person);
        return member;
    }

    public static JsonObject Role(Role r, int position) => new()
    {
        ["id"] = r.Id.Text(),
        ["name"] = r.Name,
        ["permissions"] = r.Rights.Bits(),
        ["position"] = position,
        ["color"] = 0,
        ["colors"] = new JsonObject { ["primary_color"] = 0, ["secondary_color"] = null, ["tertiary_color"] = null },
        ["hoist"] = false,
        ["managed"] = false,
        ["mentionable"] = r.Mentionable,
        ["icon"] = null,
        ["unicode_emoji"] = null,
        ["flags"] = 0,
    };

    public static JsonArray Roles(Guild g) => Wire.ArrayOf(g.Roles.Select((r, i) => Role(r, i)));
}
