# project
