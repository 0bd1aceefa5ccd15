# Lo que los niños han mostrado.
learning-of-many = { $children } vale por varios niños, así que lo que se vio de ellos no se usa.
learning-of-many-mend = Dé a cada niño una fila propia en children.csv, con un código, y use ese código.
