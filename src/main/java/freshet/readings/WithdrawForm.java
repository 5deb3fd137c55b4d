package freshet.readings;

import org.jspecify.annotations.Nullable;

/** Why a reading or a flow test is taken back. */
record WithdrawForm(@Nullable String why) {}
