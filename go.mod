module example.org/netpost

go 1.26
