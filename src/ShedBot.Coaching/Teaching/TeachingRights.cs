namespace ShedBot.Coaching.Teaching;

/// <summary>What somebody may do with their club's rules. Worked out anew for every act; never kept.</summary>
[Flags]
public enum TeachingRights
{
    /// <summary>Pass a tip on; any member may.</summary>
    None = 0,

    /// <summary>Write proposals, try them, and look at tips, reports and what was done.</summary>
    Propose = 1,

    /// <summary>Publish and refuse proposals, take editions back.</summary>
    Publish = 2,

    /// <summary>Choose who may propose and publish, and how the club learns.</summary>
    Manage = 4,

    All = Propose | Publish | Manage,
}
