"""The kinds of damage, and which of them can hurt a lamb."""

from __future__ import annotations

from tests.bench.defects import texts, ways
from tests.bench.defects.damage import Kind

SAFETY: tuple[Kind, ...] = (
    ways.retarget_a_branch,
    ways.retarget_within_its_topic,
    ways.swap_two_branches,
    ways.swap_two_targets,
    ways.shift_a_threshold,
    ways.shift_the_line_itself,
    ways.drop_at_least,
    ways.soften_at_least,
    ways.delete_an_unsure_branch,
    ways.make_unsure_the_easy_way,
    ways.delete_a_branch,
    ways.move_a_choice,
    ways.skip_a_question,
    ways.enter_elsewhere,
    ways.drop_a_danger_sign,
    ways.drop_a_forget,
    ways.turn_an_act,
    texts.soften_an_end,
    texts.drop_a_caution,
    texts.turn_a_caution_round,
    texts.drop_a_vet_line,
    texts.drop_the_call_itself,
    texts.drop_an_act_tag,
    texts.drop_a_step,
    texts.feed_where_nothing_goes_in,
    texts.feed_or_warm_before_the_vet,
    texts.name_another_sum,
    texts.wait_longer,
    texts.never_look_again,
    texts.move_a_number,
    texts.change_a_unit,
)
"""Damage that changes what is done to a lamb, or when a vet is called."""

OTHER: tuple[Kind, ...] = (
    ways.repeat_a_choice,
    ways.uncount_an_act,
    texts.type_a_figure,
    texts.turn_the_safer_side,
    texts.break_a_source,
    texts.weaken_a_number,
    texts.leave_a_number_unused,
    texts.write_long_and_vague,
    texts.crowd_a_page,
)
"""Damage to how well the guide can be read, trusted or kept up."""
