package freshet.pumps;

/** What a piece of kit is. */
public enum KitKind {
    HOSE,
    ADAPTER,
    STRAINER,
    FLOAT_SWITCH,
    CLAMP,
    THREAD_SEALANT,
    CORD,
    ROPE,
    OTHER
}
