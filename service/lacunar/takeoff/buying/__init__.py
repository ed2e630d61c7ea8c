"""Material lists: parts and quantities in, what to buy of everything out.

`problems` turns parts into cutting problems, each material from its stock; once these are planned
(`takeoff/cutting`), `material_list` puts together what is bought of sticks, sheets and boards with
packs of all that is counted, spread or poured. Must not happen here: cutting plans themselves, or
any size that parts and quantities do not have.
"""
