using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Yaml;

namespace ShedBot.Knowledge.Layers;

/// <summary>Takes out of the base what points at retired rules, so that nothing is left hanging. The club's own rules are left to their author.</summary>
internal sealed class Cascade(RuleBase under, Dictionary<RuleKey, MapNode?> changed, HashSet<RuleKey> own, ImmutableArray<AlsoGone>.Builder gone)
{
    public void Run(IEnumerable<RuleKey> retired)
    {
        var queue = new Queue<RuleKey>(retired.Where(r => under.Has(r) && changed.TryGetValue(r, out var node) && node is null));
        while (queue.TryDequeue(out var key))
        {
            foreach (var user in under.Keys.ToList())
            {
                if (own.Contains(user) || (changed.TryGetValue(user, out var now) && now is null)) continue;
                var node = now ?? under.NodeOf(user)!;
                if (Without(user, node, key) is not { } left)
                {
                    changed[user] = null;
                    gone.Add(new AlsoGone(key, user, null));
                    queue.Enqueue(user);
                }
                else if (!ReferenceEquals(left, node))
                {
                    changed[user] = left;
                }
            }
        }
    }

    /// <returns>The same node when nothing in it points at the rule; null when nothing sensible is left of it.</returns>
    private MapNode? Without(RuleKey user, MapNode node, RuleKey key) => (user.Kind, key.Kind) switch
    {
        (RuleKind.Fault, RuleKind.Finding or RuleKind.Complaint) => Key(user, node, key, "shows as", orAll: true),
        (RuleKind.Fault, RuleKind.Fact) => Items(user, node, key, "moved by"),
        (RuleKind.Check, RuleKind.Finding or RuleKind.Complaint) => (node["tells"] as Scalar)?.Text.Trim() == key.Id ? null : node,
        (RuleKind.Check or RuleKind.Repair, RuleKind.Cover) => (node["cover"] as Scalar)?.Text.Trim() == key.Id ? Take(user, node, key, "cover", "cover") : node,
        (RuleKind.Repair, RuleKind.Fault) => Key(user, node, key, "mends", orAll: true),
        (RuleKind.Service, RuleKind.Fact) => Items(user, node, key, "only if"),
        (RuleKind.Service, RuleKind.Repair) => After(user, Texts(user, node, key, "done by"), key),
        (RuleKind.Service, RuleKind.Service) => After(user, node, key),
        (RuleKind.Service, RuleKind.Complaint) => Texts(user, node, key, "reveals"),
        _ => node,
    };

    private MapNode? Key(RuleKey user, MapNode node, RuleKey key, string list, bool orAll)
    {
        if (node[list] is not MapNode map || map[key.Id] is null) return node;
        var left = map with { Entries = map.Entries.RemoveAll(e => e.Key.Text == key.Id) };
        if (orAll && left.Entries.IsEmpty) return null;
        gone.Add(new AlsoGone(key, user, RulePath.Of(list, key.Id)));
        return With(node, list, left);
    }

    /// <summary>Lists whose items name a fact.</summary>
    private MapNode Items(RuleKey user, MapNode node, RuleKey key, string list)
    {
        if (node[list] is not ListNode items) return node;
        var left = items.Items.RemoveAll(i => i is MapNode m && (m["fact"] as Scalar)?.Text.Trim() == key.Id);
        if (left.Length == items.Items.Length) return node;
        gone.Add(new AlsoGone(key, user, RulePath.Of(list, key.Id)));
        return With(node, list, items with { Items = left });
    }

    private MapNode Texts(RuleKey user, MapNode node, RuleKey key, string list)
    {
        if (node[list] is not ListNode items) return node;
        var left = items.Items.RemoveAll(i => i is Scalar s && s.Text.Trim() == key.Id);
        if (left.Length == items.Items.Length) return node;
        gone.Add(new AlsoGone(key, user, RulePath.Of(list, key.Id)));
        return With(node, list, items with { Items = left });
    }

    /// <summary>An event that cannot come goes from each line, and a line without events with it; a task that is then never due goes too.</summary>
    private MapNode? After(RuleKey user, MapNode node, RuleKey key)
    {
        if (node["after"] is not ListNode lines) return node;
        var left = ImmutableArray.CreateBuilder<Node>();
        var any = false;
        foreach (var line in lines.Items)
        {
            if (line is not MapNode map || map["events"] is not ListNode events || !events.Items.Any(e => e is Scalar s && s.Text.Trim() == key.Id))
            {
                left.Add(line);
                continue;
            }

            any = true;
            var kept = events.Items.RemoveAll(e => e is Scalar s && s.Text.Trim() == key.Id);
            if (!kept.IsEmpty) left.Add(With(map, "events", events with { Items = kept }));
        }

        if (!any) return node;
        if (left.Count == 0 && node["every"] is not ListNode { Items.IsEmpty: false } && (node["before each ride"] as Scalar)?.Text.Trim() != "yes") return null;
        gone.Add(new AlsoGone(key, user, RulePath.Of("after", key.Id)));
        return left.Count == 0 ? Drop(node, "after") : With(node, "after", lines with { Items = left.ToImmutable() });
    }

    private MapNode Take(RuleKey user, MapNode node, RuleKey key, string at, string path)
    {
        gone.Add(new AlsoGone(key, user, new RulePath(path)));
        return Drop(node, at);
    }

    private static MapNode Drop(MapNode node, string key) => node with { Entries = node.Entries.RemoveAll(e => e.Key.Text == key) };

    private static MapNode With(MapNode node, string key, Node value) =>
        node with { Entries = [.. node.Entries.Select(e => e.Key.Text == key ? e with { Value = value } : e)] };
}
