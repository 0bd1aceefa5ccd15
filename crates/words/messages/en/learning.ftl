# What children have shown.
learning-of-many = { $children } stands for several children, so what was seen of them is not used.
learning-of-many-mend = Give each child a row of its own in children.csv, with a code, and use that code.
